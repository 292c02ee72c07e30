// How long it lasts: the headline of the first grade, the figures behind it, and every run-out that is known so far.
import { roundCoverDays } from '../../../../ground/units/index.ts';
import {
  bandWithin,
  type CoverFigure,
  type SheetFigure,
  saidValue,
  type TodaySheet,
} from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { NamedQuantity, Quantity } from '../../parts/figure.tsx';
import { Reach, ReachTable, runOutsOf } from '../../parts/reach.tsx';
import { Stave } from '../../parts/stave.tsx';
import { Twin } from '../../parts/table.tsx';

export function HowLong({ sheet }: { readonly sheet: TodaySheet }) {
  const { today } = words();
  const runs = runOutsOf(sheet);
  const [first, ...others] = Object.entries(sheet.cover);
  return (
    <section className="row first">
      <h2>{today.howLong}</h2>
      <div className="lead">
        {first !== undefined && <Lasts grade={first[0]} cover={first[1]} lead />}
        {runs.length > 0 && (
          <div>
            <h3 className="xs">{today.when}</h3>
            <Twin
              picture={<Reach sheet={sheet} runs={runs} />}
              table={<ReachTable sheet={sheet} runs={runs} />}
            />
          </div>
        )}
        {others.map(([grade, cover]) => (
          <Lasts key={grade} grade={grade} cover={cover} />
        ))}
        <Reserve sheet={sheet} />
      </div>
    </section>
  );
}

/** The days as a figure that opens how it was reckoned. */
function daysFigure(cover: CoverFigure): SheetFigure {
  return { value: cover.q05 ?? 0, u95: null, unit: 'd', because: cover.because };
}

/** How long the water of one grade lasts: the first grade is the headline, the others stand smaller beside it. */
function Lasts({
  grade,
  cover,
  lead = false,
}: {
  readonly grade: string;
  readonly cover: CoverFigure;
  readonly lead?: boolean;
}) {
  const { today } = words();
  const size = lead ? 'md' : '';
  return (
    <div className={lead ? '' : 'second'}>
      {cover.basis === 'not enough data' ? (
        <p className={size}>{today.noCover(grade)}</p>
      ) : cover.q05 === null ? (
        <p className={size}>{today.never(grade)}</p>
      ) : (
        <>
          <p>
            <Quantity
              figure={daysFigure(cover)}
              of={grade}
              text={today.days(roundCoverDays(cover.q05))}
              className={lead ? 'big' : 'md'}
            />
          </p>
          <p className={size}>
            {today.ofFree(grade)}
            {cover.outDayQ05 !== null && (
              <>
                , <b className="nowrap">{today.toDay(cover.outDayQ05)}</b>
              </>
            )}
          </p>
        </>
      )}
      <Behind grade={grade} cover={cover} />
    </div>
  );
}

/** Free stock, use, and the middle outcome: small figures under the large one. */
function Behind({ grade, cover }: { readonly grade: string; readonly cover: CoverFigure }) {
  const { today } = words();
  const days = cover.use?.because.inputs.find(({ name }) => name === 'days')?.value;
  const basis = cover.basis === 'norm' ? today.norm : today.learned(typeof days === 'number' ? days : null);
  return (
    <div className="behind">
      <NamedQuantity figure={cover.free} of={`${grade}, ${today.free}`} name={today.free} />
      {cover.use !== null && (
        <NamedQuantity figure={cover.use} of={`${grade}, ${today.use}`} name={today.use} note={basis} />
      )}
      {cover.basis !== 'not enough data' && (
        <p className="xs soft">
          {cover.q50 === null ? today.middleNever : today.middle(roundCoverDays(cover.q50))}
        </p>
      )}
    </div>
  );
}

function staveOfReserve(reserve: NonNullable<TodaySheet['reserve']>) {
  const { value, u95 } = reserve.volume;
  return {
    capacity: reserve.capacityL,
    grade: 'drinking',
    value: u95 === null ? null : value,
    ...bandWithin(reserve.volume, reserve.capacityL),
    floor: reserve.floorL,
  };
}

function Reserve({ sheet }: { readonly sheet: TodaySheet }) {
  const { today } = words();
  const { reserve, cover } = sheet;
  if (reserve === null) return null;
  const floor = today.reserveFloor(saidValue(reserve.floorL, 'L'));
  const isBelow = reserve.volume.value < reserve.floorL;
  const toFloor = Object.values(cover).find((each) => each.toFloor !== null)?.toFloor ?? null;
  return (
    <div className="second">
      <NamedQuantity figure={reserve.volume} of={today.reserve} name={today.reserve} note={floor} />
      <Stave facts={staveOfReserve(reserve)} label={`${today.reserveHead}: ${floor}`} />
      <p className="xs">
        {isBelow ? <b>{today.reserveBelow}</b> : today.reserveAbove}
        {reserve.conditionalL > 0 && <> {today.conditional(`${Math.round(reserve.conditionalL)}\u00A0L`)}.</>}
        {toFloor !== null && toFloor.q05 !== null && <> {today.toFloor(roundCoverDays(toFloor.q05))}</>}
      </p>
    </div>
  );
}
