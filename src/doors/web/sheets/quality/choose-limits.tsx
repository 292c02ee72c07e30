// Sets of limits are chosen: which stores that would hold, what stays free, what cannot be met; kept with a reason.
import '../../style/quality.css';
import { type FormEvent, useState } from 'react';
import { parseNumber } from '../../../../ground/units/index.ts';
import type { LimitSetsSheet } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { useEntrance } from '../../entering.ts';
import { words } from '../../language.ts';
import { Dialog } from '../../parts/dialog.tsx';
import { Choices, ReasonField, TextField } from '../../parts/fields.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { SaveRow } from '../../parts/save-row.tsx';
import { CHOOSE, type LimitChoice } from './entrances.ts';
import { LimitsWould } from './limits-would.tsx';
import { useAhead } from './looking-ahead.ts';
import { StoreChoices } from './store-choices.tsx';

export function ChooseLimits({ named }: { readonly named: string | undefined }) {
  const { quality } = words();
  const sets = useSheet<LimitSetsSheet>('/api/limits/sets').data?.sets ?? [];
  const [chosen, setChosen] = useState<readonly string[]>(named === undefined ? [] : [named]);
  const [how, setHow] = useState<'beside' | 'instead'>('beside');
  const [rows, setRows] = useState('');
  const [days, setDays] = useState('');
  const [reason, setReason] = useState('');
  const entering = useEntrance(CHOOSE);
  const choice = choiceOf({ chosen, how, rows, days });
  const ahead = useAhead(CHOOSE, chosen.length === 0 ? null : choice, '');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void entering.save({ ...choice, reason: reason.trim() }, { sure: true });
  };
  return (
    <Dialog title={quality.chooseTitle} wide>
      <form className="stack" onSubmit={submit}>
        <p className="soft">{quality.chooseNote}</p>
        <Refusal entering={entering} />
        <StoreChoices
          label={quality.sets}
          stores={sets.map(({ id, on, off, required }) => ({
            store: id,
            note: [quality.setLine(on, off), ...(required > 0 ? [quality.inForce] : [])].join(', '),
          }))}
          chosen={chosen}
          onChange={setChosen}
        />
        <Choices
          label={quality.how}
          value={how}
          options={[
            { value: 'beside' as const, text: quality.beside },
            { value: 'instead' as const, text: quality.instead },
          ]}
          onChange={setHow}
        />
        <div className="two">
          <TextField label={quality.rows} value={rows} onChange={setRows} hint={quality.rowsHint} />
          <TextField
            label={quality.exposure}
            value={days}
            onChange={setDays}
            hint={quality.exposureHint}
            numeric
          />
        </div>
        <LimitsWould effect={ahead.sheet?.effect ?? null} findings={ahead.findings} />
        <ReasonField
          label={quality.chooseWhy}
          usual={quality.chooseReasons}
          value={reason}
          onChange={setReason}
        />
        <SaveRow
          entering={entering}
          label={quality.chooseSave}
          disabled={chosen.length === 0 || reason.trim() === '' || ahead.sheet === null || !ahead.isCurrent}
        />
      </form>
    </Dialog>
  );
}

function choiceOf(told: {
  readonly chosen: readonly string[];
  readonly how: 'beside' | 'instead';
  readonly rows: string;
  readonly days: string;
}): LimitChoice {
  const rows = told.rows
    .split(',')
    .map((row) => row.trim())
    .filter((row) => row !== '');
  const days = parseNumber(told.days);
  return {
    sets: told.chosen,
    ...(rows.length > 0 && { rows }),
    ...(days.ok && days.value > 0 && { exposureDays: days.value }),
    ...(told.how === 'instead' && { only: true }),
  };
}
