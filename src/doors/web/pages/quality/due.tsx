// What is due: samples by interval, results that are waited for, own samples of water on a certificate.
import { useState } from 'react';
import type { DueLine } from '../../../../papers/index.ts';
import { saidDue } from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { openSheet } from '../../open.ts';
import { Table } from '../../parts/table.tsx';
import { isPast, type Place } from '../../place.ts';
import { Row } from './row.tsx';

/** More than these are on request. */
const MOST = 6;

export function Due({ due, place }: { readonly due: readonly DueLine[]; readonly place: Place }) {
  const { quality } = words();
  const [all, setAll] = useState(false);
  const shown = all ? due : due.slice(0, MOST);
  return (
    <Row head={quality.due}>
      {due.length === 0 ? (
        <p>{quality.nothingDue}</p>
      ) : (
        <Table
          caption={quality.due}
          hideCaption
          rows={shown}
          keyOf={({ kind, name, place: at }) => `${kind} ${name} ${at}`}
          columns={[
            { head: quality.place, text: placeOf, show: (line) => <b>{placeOf(line)}</b> },
            { head: quality.what, text: saidDue },
            {
              head: quality.when,
              text: whenDue,
              show: (line) => <span className={line.overdueDays > 0 ? 'strong' : ''}>{whenDue(line)}</span>,
            },
            ...(isPast(place)
              ? []
              : [
                  {
                    head: quality.newSample,
                    pressed: true,
                    text: () => '',
                    show: (line: DueLine) => <Act line={line} />,
                  },
                ]),
          ]}
        />
      )}
      {due.length > MOST && (
        <button type="button" className="b small no-print" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? quality.showFewer : `${quality.dueAll} ${due.length}`}
        </button>
      )}
      {!all && due.length > MOST && <p className="print-only">{quality.dueMore(due.length - MOST)}</p>}
    </Row>
  );
}

/** What is to be sampled anywhere has no place of its own. */
function placeOf({ place, name }: DueLine): string {
  return place === '' ? name : place;
}

function whenDue({ dueDay, overdueDays }: DueLine): string {
  const { quality } = words();
  return overdueDays > 0 ? `${quality.onDay(dueDay)}, ${quality.over(overdueDays)}` : quality.onDay(dueDay);
}

/** What is waited for is a result; else a sample has to be drawn. */
function Act({ line }: { readonly line: DueLine }) {
  const { quality } = words();
  const isResult = line.kind === 'test';
  const of = isResult ? line.name : line.place;
  return (
    <button
      type="button"
      className="b small"
      aria-label={isResult ? quality.enterResultOf(of) : `${quality.ways.sample}: ${placeOf(line)}`}
      onClick={() => openSheet({ kind: 'sample', drawn: !isResult, ...(of !== '' && { of }) })}
    >
      {isResult ? quality.enterResult : quality.ways.sample}
    </button>
  );
}
