// What belongs to this device: who uses it, its keys, its light, and how large things to press are.
import { useSheet } from '../api/cache.ts';
import { type Device, device, remember } from '../device.ts';
import { words } from '../language.ts';
import { closeSheet } from '../open.ts';
import { Dialog } from '../parts/dialog.tsx';
import { Choices } from '../parts/fields.tsx';

export function Who() {
  const { frame } = words();
  const { office } = device.use();
  const names = useSheet<{ readonly offices: readonly string[] }>('/api/offices');
  const offices = names.data?.offices ?? [office];
  return (
    <Dialog title={frame.who}>
      <p className="soft">{frame.whoNote}</p>
      <div className="flow">
        {offices.map((each) => (
          <button
            key={each}
            type="button"
            className="b"
            aria-pressed={each === office}
            data-first={each === office || undefined}
            onClick={() => {
              remember({ office: each });
              closeSheet();
            }}
          >
            {each}
          </button>
        ))}
      </div>
    </Dialog>
  );
}

export function KeysSheet() {
  const { keys, pages, log, frame, time, quality } = words();
  const { keys: on } = device.use();
  const names: Readonly<Record<keyof typeof keys.rows, string>> = {
    today: `${keys.go} ${pages.today}`,
    daybook: `${keys.go} ${pages.daybook}`,
    stores: `${keys.go} ${pages.stores}`,
    quality: `${keys.go} ${pages.quality}`,
    inbox: `${keys.go} ${pages.inbox}`,
    reckon: `${keys.go} ${pages.reckon}`,
    line: `${keys.enter}: ${log.day}`,
    drink: `${keys.enter}: ${log.drink}`,
    fill: `${keys.enter}: ${log.fill}`,
    weigh: `${keys.enter}: ${log.weigh}`,
    sample: `${keys.enter}: ${quality.sample}`,
    find: frame.find,
    undo: log.undo,
    back: time.back,
    on: time.on,
    print: frame.print,
    keys: frame.keys,
    close: log.close,
  };
  return (
    <Dialog title={keys.title}>
      <p>
        {on ? keys.on : keys.off}. {keys.note}
      </p>
      <button type="button" className="b small" data-first onClick={() => remember({ keys: !on })}>
        {on ? keys.turnOff : keys.turnOn}
      </button>
      <dl className="key-list">
        {(Object.entries(keys.rows) as [keyof typeof keys.rows, string][]).map(([name, key]) => (
          <div key={name}>
            <dt>
              <kbd>{key}</kbd>
            </dt>
            <dd>{names[name]}</dd>
          </div>
        ))}
      </dl>
    </Dialog>
  );
}

export function DeviceSheet() {
  const { device: names } = words();
  const { theme, targets } = device.use();
  const listed = <T extends string>(table: Readonly<Record<T, string>>) =>
    (Object.entries(table) as [T, string][]).map(([value, text]) => ({ value, text }));
  return (
    <Dialog title={names.title}>
      <div className="stack">
        <Choices<Device['theme']>
          label={names.theme}
          value={theme}
          options={listed(names.themes)}
          onChange={(chosen) => remember({ theme: chosen })}
        />
        <Choices<Device['targets']>
          label={names.targets}
          value={targets}
          options={listed(names.sizes)}
          onChange={(chosen) => remember({ targets: chosen })}
        />
        <p className="xs soft">{names.note}</p>
      </div>
    </Dialog>
  );
}
