// Where the water of a store came from: each part under the one that it flowed into, with litres, share and days.
import { type FamilyNode, saidDayRange, saidPart, saidRefs } from '../../../papers/index.ts';
import { words } from '../language.ts';
import { Quantity } from './figure.tsx';
import { GradeBadge } from './grade.tsx';
import { Table } from './table.tsx';

export function FamilyTree({ parts }: { readonly parts: readonly FamilyNode[] }) {
  return (
    <ul className="tree">
      {parts.map((part) => (
        <li key={keyOf(part)}>
          <div className="tree-node">
            {part.kind === 'store' && <GradeBadge grade={part.grade} />}
            <b>{saidPart(part)}</b>
            <Quantity figure={part.volume} of={saidPart(part)} />
            <span className="soft nowrap">{percent(part.share)}</span>
            {part.days !== null && <span className="soft nowrap">{saidDayRange(part.days)}</span>}
          </div>
          {part.parts.length > 0 && <FamilyTree parts={part.parts} />}
        </li>
      ))}
    </ul>
  );
}

interface Row {
  readonly part: FamilyNode;
  readonly depth: number;
  readonly key: string;
}

export function FamilyTable({ parts }: { readonly parts: readonly FamilyNode[] }) {
  const { stores } = words();
  return (
    <Table
      caption={stores.family}
      rows={rowsOf(parts, 0, '')}
      keyOf={({ key }) => key}
      columns={[
        { head: stores.part, text: ({ part, depth }) => `${'– '.repeat(depth)}${saidPart(part)}` },
        {
          head: 'L',
          right: true,
          text: ({ part }) => `${part.volume.value}`,
          show: ({ part }) => <Quantity figure={part.volume} of={saidPart(part)} />,
        },
        { head: stores.share, right: true, text: ({ part }) => percent(part.share) },
        { head: stores.came, text: ({ part }) => (part.days === null ? '' : saidDayRange(part.days)) },
        { head: stores.by, text: ({ part }) => saidRefs(part.refs, part.entryCount) },
      ]}
    />
  );
}

function rowsOf(parts: readonly FamilyNode[], depth: number, above: string): readonly Row[] {
  return parts.flatMap((part) => {
    const key = `${above}/${keyOf(part)}`;
    return [{ part, depth, key }, ...rowsOf(part.parts, depth + 1, key)];
  });
}

function keyOf({ kind, name, refs, days }: FamilyNode): string {
  return `${kind} ${name} ${days?.first ?? ''} ${refs[0] ?? ''}`;
}

function percent(share: number): string {
  const whole = Math.round(share * 100);
  return whole === 0 && share > 0 ? '< 1\u00A0%' : `${whole}\u00A0%`;
}
