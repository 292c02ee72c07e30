// Since you last looked: what came in, what went on or off hold, what is believed otherwise; kept by office.
import { useState } from 'react';
import type { SinceSheet } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { device, remember } from '../../device.ts';
import { words } from '../../language.ts';
import { Quantity } from '../../parts/figure.tsx';
import { LevelSign } from '../../parts/finding-line.tsx';
import { Phrased } from '../../parts/phrased.tsx';
import { Failed } from '../../parts/states.tsx';

export function Since({ at }: { readonly at: string }) {
  const { office, looked } = device.use();
  const from = looked[office];
  // Before anybody said that they had seen it: since the last entry of that office.
  const query = from === undefined ? `by=${encodeURIComponent(office)}` : `from=${encodeURIComponent(from)}`;
  const sheet = useSheet<SinceSheet>(`/api/since?${query}`);
  const [open, setOpen] = useState(false);
  const { today, since } = words();
  const { data } = sheet;
  return (
    <section className="row no-print">
      <h2>{today.sinceHead}</h2>
      <div>
        {data === undefined && sheet.failed !== null && <Failed sheet={sheet} />}
        {data !== undefined && (
          <div className="line-with-act">
            <p>
              {since.since(data.since)}{' '}
              {data.entries === 0
                ? since.nothing
                : `${since.line(data.entries, data.corrections, data.late)}.`}{' '}
              {data.heldSince.length > 0 && <b>{since.held(data.heldSince.join(', '))} </b>}
              {data.freedSince.length > 0 && since.freed(data.freedSince.join(', '))}
            </p>
            {data.entries > 0 && (
              <button type="button" className="b small" aria-expanded={open} onClick={() => setOpen(!open)}>
                {open ? since.hide : since.show}
              </button>
            )}
          </div>
        )}
        {open && data !== undefined && (
          <>
            <Details sheet={data} />
            <button
              type="button"
              className="b small"
              onClick={() => {
                setOpen(false);
                remember({ looked: { ...looked, [office]: at } });
              }}
            >
              {since.seen}
            </button>
          </>
        )}
      </div>
    </section>
  );
}

function Details({ sheet }: { readonly sheet: SinceSheet }) {
  const { since } = words();
  return (
    <div className="stack details">
      {sheet.moved.length > 0 && (
        <>
          <h3>{since.anew}</h3>
          <ul>
            {sheet.moved.map(({ store, before, after }) => (
              <li key={store}>
                {since.anewLine(store)} <Quantity figure={after} of={store} /> {since.anewWas}{' '}
                <Quantity figure={before} of={store} />
              </li>
            ))}
          </ul>
        </>
      )}
      {sheet.newFindings.length > 0 && (
        <>
          <h3>{since.newNeeds}</h3>
          <ul className="plain">
            {sheet.newFindings.map((finding) => (
              <li key={`${finding.code} ${finding.text}`}>
                <LevelSign severity={finding.severity} /> <Phrased text={finding.text} />
              </li>
            ))}
          </ul>
        </>
      )}
      <h3>{since.newLines}</h3>
      <ul className="plain">
        {sheet.lines.map((line) => (
          <li key={line.id}>
            <span className="soft nowrap">{line.happened}</span> <Phrased text={line.text} />{' '}
            <span className="soft">{line.by}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
