// What is held now: each hold with its litres and its stores, the reason, and since when.
import type { HoldLine, HoldsSheet } from '../../../../papers/index.ts';
import type { Sheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { Quantity } from '../../parts/figure.tsx';
import { Failed, Working } from '../../parts/states.tsx';
import { hrefOf, type Place } from '../../place.ts';
import { Row } from './row.tsx';

export function Held({ sheet, place }: { readonly sheet: Sheet<HoldsSheet>; readonly place: Place }) {
  const { quality } = words();
  const { data, failed } = sheet;
  const open = data?.holds.filter((hold) => hold.open) ?? [];
  return (
    <Row head={quality.held} className="first">
      {data === undefined && (failed === null ? <Working /> : <Failed sheet={sheet} />)}
      {data !== undefined && open.length === 0 && <p>{quality.nothingHeld}</p>}
      <ul className="holds">
        {open.map((hold) => (
          <HoldItem key={hold.hold} hold={hold} place={place} />
        ))}
      </ul>
    </Row>
  );
}

function HoldItem({ hold, place }: { readonly hold: HoldLine; readonly place: Place }) {
  const { quality } = words();
  const by = (as: string) => hold.stores.filter((store) => store.as === as).map(({ store }) => store);
  const [held, conditional, waived] = [by('hold'), by('conditional'), by('waived')];
  return (
    <li className="hold-item">
      <p className="hold-head">
        <a className="link" href={hrefOf({ ...place, item: hold.hold })}>
          <b>{quality.holdTitle(hold.hold)}</b>
        </a>
        <span className="soft">{quality.since(hold.since, hold.reason)}</span>
      </p>
      {held.length > 0 && (
        <p className="hold-line">
          <span className="mark">{quality.why.hold}</span>
          <Quantity figure={hold.volume} of={quality.holdTitle(hold.hold)} />
          <span>{held.join(', ')}</span>
        </p>
      )}
      {conditional.length > 0 && (
        <p className="hold-line">
          <span className="mark">{quality.why.conditional}</span>
          <Quantity figure={hold.conditionalVolume} of={quality.conditional} />
          <span>{conditional.join(', ')}</span>
        </p>
      )}
      {waived.length > 0 && (
        <p className="hold-line">
          <span className="mark">{quality.why.waived}</span>
          <span>{waived.join(', ')}</span>
        </p>
      )}
      {hold.parked !== null && (
        <p className="xs">
          {quality.parked} {quality.parkedWith(hold.parked.owner, hold.parked.until, hold.parked.over)}
        </p>
      )}
    </li>
  );
}
