// The lines of the daybook as a table: an undone line stays readable, struck through and marked with a word.
import type { ReactNode } from 'react';
import type { BookLine } from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { openSheet } from '../../open.ts';
import { Phrased } from '../../parts/phrased.tsx';
import { Table } from '../../parts/table.tsx';

/** Kinds that an undo cannot point at, or that have a way of their own. */
const NOT_UNDONE = new Set(['undo', 'outpost', 'day-close']);

export function BookTable({
  lines,
  caption,
  canAct,
}: {
  readonly lines: readonly BookLine[];
  readonly caption: string;
  readonly canAct: boolean;
}) {
  const { daybook } = words();
  const youngestFirst = [...lines].reverse();
  return (
    <Table
      caption={caption}
      className="book-table"
      rows={youngestFirst}
      keyOf={({ id }) => id}
      classOf={(line) => (line.undoneBy === null ? '' : 'undone')}
      columns={[
        {
          head: daybook.number,
          text: ({ ref }) => ref,
          show: ({ ref }) => <span className="nowrap">{ref}</span>,
        },
        {
          head: daybook.happened,
          text: ({ happened }) => happened,
          show: ({ happened }) => <span className="nowrap">{happened}</span>,
        },
        { head: daybook.what, text: (line) => line.text, show: (line) => <What line={line} /> },
        { head: daybook.by, text: ({ by }) => by },
        { head: daybook.mark, text: (line) => marksOf(line).join('; '), show: marks },
        ...(canAct
          ? [
              {
                head: daybook.act,
                pressed: true,
                text: () => '',
                show: (line: BookLine) => <Acts line={line} />,
              },
            ]
          : []),
      ]}
    />
  );
}

function What({ line }: { readonly line: BookLine }) {
  const { daybook } = words();
  const body = <Phrased text={line.text} />;
  return (
    <>
      {line.undoneBy === null ? body : <s>{body}</s>}
      {line.now !== null && <p className="xs">{daybook.nowCounts(line.now)}</p>}
      {line.note !== null && <p className="xs soft note">“{line.note}”</p>}
      {line.source !== null && <p className="xs soft">{daybook.copied(line.source)}</p>}
      {line.late && <p className="xs soft">{daybook.entered(line.entered)}</p>}
    </>
  );
}

function marksOf(line: BookLine): readonly string[] {
  const { daybook } = words();
  return [
    ...(line.undoneBy === null ? [] : [daybook.undoneBy(line.undoneBy)]),
    ...(line.correctedBy === null ? [] : [daybook.correctedBy(line.correctedBy)]),
    ...(line.late ? [daybook.late] : []),
  ];
}

function marks(line: BookLine): ReactNode {
  return marksOf(line).map((mark) => (
    <span key={mark} className="xs mark-word">
      {mark}
    </span>
  ));
}

function Acts({ line }: { readonly line: BookLine }) {
  const { daybook } = words();
  if (NOT_UNDONE.has(line.kind) || line.undoneBy !== null) return null;
  return (
    <span className="acts no-print">
      {line.mayCorrect !== null && (
        <button
          type="button"
          className="b small"
          aria-label={`${daybook.correct} ${line.ref}`}
          onClick={() => openSheet({ kind: 'correct', line })}
        >
          {daybook.correct}
        </button>
      )}
      <button
        type="button"
        className="b small"
        aria-label={`${daybook.undo} ${line.ref}`}
        onClick={() => openSheet({ kind: 'undo-line', line })}
      >
        {daybook.undo}
      </button>
    </span>
  );
}
