// The sheet of samples: a result that came, or a sample that was drawn; one press changes from one to the other.
import '../../style/quality.css';
import { useState } from 'react';
import { words } from '../../language.ts';
import { Dialog } from '../../parts/dialog.tsx';
import { Choices } from '../../parts/fields.tsx';
import { NewResult } from './new-result.tsx';
import { NewSample } from './new-sample.tsx';

type Which = 'result' | 'drawn';

export function SampleDialog({ of, drawn }: { readonly of: string | undefined; readonly drawn: boolean }) {
  const { quality } = words();
  const [which, setWhich] = useState<Which>(drawn ? 'drawn' : 'result');
  return (
    <Dialog title={quality.sheetTitle[which]} wide>
      <div className="stack">
        <Choices<Which>
          label={quality.whichSheet}
          value={which}
          options={[
            { value: 'result', text: quality.which.result },
            { value: 'drawn', text: quality.which.drawn },
          ]}
          onChange={setWhich}
        />
        {which === 'result' ? <NewResult named={of} /> : <NewSample named={of} />}
      </div>
    </Dialog>
  );
}
