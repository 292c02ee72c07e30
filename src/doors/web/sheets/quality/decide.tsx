// What a failing result would hold, before it is saved; and the three ways on: all of it, fewer with a reason and a second, back.
import { useState } from 'react';
import type { ResultRequest, SecondNamed } from '../../../../desk/index.ts';
import type { HoldTree, ResultSheet } from '../../../../papers/index.ts';
import type { Entering } from '../../entering.ts';
import { words } from '../../language.ts';
import { ReasonField } from '../../parts/fields.tsx';
import { Phrased } from '../../parts/phrased.tsx';
import { SaveRow } from '../../parts/save-row.tsx';
import { Second } from '../../parts/second.tsx';
import { daysOf, EffectTable, screen, TouchTree, TraceWords } from '../../parts/touch-tree.tsx';

export function WillHold({ sheet, tree }: { readonly sheet: ResultSheet; readonly tree: HoldTree }) {
  const { quality } = words();
  return (
    <section className="will-hold">
      <h3>{quality.willHold}</h3>
      <p>
        <b>{quality.fails(sheet.fails.join(', '))}</b> <span className="xs soft">{quality.willHoldNote}</span>
      </p>
      <TouchTree trace={tree.trace} />
      <EffectTable tree={tree} />
      <TraceWords trace={tree.trace} />
    </section>
  );
}

interface Told {
  readonly entering: Entering<ResultRequest>;
  /** What nobody has decided about yet; null: nothing is to be held. */
  readonly tree: HoldTree | null;
  readonly canSave: boolean;
  readonly onSave: (
    hold: { readonly hold?: readonly string[]; readonly reason?: string },
    second?: SecondNamed,
  ) => void;
  readonly onBack: () => void;
}

export function Decide({ entering, tree, canSave, onSave, onBack }: Told) {
  const { quality } = words();
  const [isFewer, setFewer] = useState(false);
  const all = tree === null ? 0 : tree.hold.length;
  return (
    <>
      {tree !== null && isFewer && <Fewer tree={tree} onSave={onSave} />}
      <div className="decide">
        {tree !== null && <InShort tree={tree} />}
        <SaveRow
          entering={entering}
          disabled={!canSave}
          {...(tree !== null && { label: quality.saveAndHold(all) })}
        >
          {tree !== null && (
            <button type="button" className="b" aria-expanded={isFewer} onClick={() => setFewer(!isFewer)}>
              {quality.holdOnly}
            </button>
          )}
          <button type="button" className="b end" onClick={onBack}>
            {quality.backNothing}
          </button>
        </SaveRow>
      </div>
    </>
  );
}

/** Beside the buttons, so that nobody saves without having it in sight. */
function InShort({ tree }: { readonly tree: HoldTree }) {
  const { quality } = words();
  const held = `${screen(tree.heldVolume)}, ${quality.storesCount(tree.hold.length)}`;
  return (
    <ul className="in-short">
      {tree.effect.map(({ grade, before, after }) => (
        <li key={grade}>
          <Phrased
            text={quality.inShort(
              held,
              quality.fromTo(screen(before.free), screen(after.free)),
              quality.fromTo(daysOf(before), daysOf(after)),
            )}
          />
        </li>
      ))}
    </ul>
  );
}

function Fewer({ tree, onSave }: { readonly tree: HoldTree; readonly onSave: Told['onSave'] }) {
  const { quality } = words();
  const proposed = [...tree.hold, ...tree.conditional];
  const [held, setHeld] = useState<readonly string[]>(proposed);
  const [reason, setReason] = useState('');
  const toggle = (store: string) =>
    setHeld(held.includes(store) ? held.filter((each) => each !== store) : [...held, store]);
  const isReady = held.length > 0 && held.length < proposed.length && reason.trim() !== '';
  return (
    <div className="stack fewer">
      <fieldset className="choices">
        <legend>{quality.onlyWhich}</legend>
        <div className="flow">
          {proposed.map((store) => (
            <button
              key={store}
              type="button"
              className="b small"
              aria-pressed={held.includes(store)}
              onClick={() => toggle(store)}
            >
              {store}
            </button>
          ))}
        </div>
      </fieldset>
      <ReasonField label={quality.onlyWhy} usual={quality.onlyReasons} value={reason} onChange={setReason} />
      <p>{quality.onlySecond}</p>
      {isReady && <Second onChoose={(second) => onSave({ hold: held, reason: reason.trim() }, second)} />}
    </div>
  );
}
