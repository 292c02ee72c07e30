// Any kind of entry that has no sheet of its own: sample, release, note and others, field by field as the book asks for them.
import { type FormEvent, useState } from 'react';
import type { KindField } from '../../../desk/index.ts';
import type { StoresSheet } from '../../../papers/index.ts';
import { useSheet } from '../api/cache.ts';
import { useEntering } from '../entering.ts';
import { words } from '../language.ts';
import { Dialog } from '../parts/dialog.tsx';
import { TextField } from '../parts/fields.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { SaveRow } from '../parts/save-row.tsx';
import { Failed, Working } from '../parts/states.tsx';
import { StorePicker } from '../parts/store-picker.tsx';
import { WhenField } from '../parts/when-field.tsx';

interface Told {
  readonly kind: string;
  readonly store: string | undefined;
}

export function KindForm({ kind, store }: Told) {
  const { remedy } = words();
  const sheet = useSheet<{ readonly fields: readonly KindField[] }>(`/api/kinds/${encodeURIComponent(kind)}`);
  const name = remedy.kinds[kind] ?? kind.replaceAll('-', ' ');
  return (
    <Dialog title={remedy.kindTitle(name)}>
      {sheet.data === undefined ? (
        sheet.failed === null ? (
          <Working />
        ) : (
          <Failed sheet={sheet} />
        )
      ) : (
        <Fields kind={kind} fields={sheet.data.fields} store={store} />
      )}
    </Dialog>
  );
}

function Fields({ kind, fields, store }: Told & { readonly fields: readonly KindField[] }) {
  const { remedy } = words();
  const [values, setValues] = useState<Readonly<Record<string, string>>>(() => filledIn(fields, store));
  const [at, setAt] = useState('');
  const stores = useSheet<StoresSheet>('/api/stores').data?.stores ?? [];
  const entering = useEntering();
  // What must be said comes first.
  const inOrder = [...fields.filter(({ needed }) => needed), ...fields.filter(({ needed }) => !needed)];
  const missing = fields.some(({ name, needed }) => needed && (values[name] ?? '').trim() === '');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const said = Object.entries(values).flatMap(([name, value]) =>
      value.trim() === '' ? [] : [[name, value.trim()]],
    );
    void entering.save({ what: 'told', kind, fields: Object.fromEntries(said) }, at === '' ? {} : { at });
  };
  return (
    <form className="stack" onSubmit={submit}>
      <Refusal entering={entering} />
      {inOrder.map(({ name, takes, needed }, k) => {
        const field = {
          label: needed ? said(name) : remedy.optional(said(name)),
          value: values[name] ?? '',
          onChange: (value: string) => setValues({ ...values, [name]: value }),
          first: k === 0,
        };
        if (takes === 'a store') return <StorePicker key={name} stores={stores} all={stores} {...field} />;
        return <TextField key={name} {...field} {...(takes !== 'text' && { hint: takes })} />;
      })}
      <WhenField value={at} onChange={setAt} />
      <SaveRow entering={entering} disabled={missing} />
    </form>
  );
}

function said(name: string): string {
  const spaced = words().remedy.fields[name] ?? name.replaceAll('-', ' ');
  return `${spaced.charAt(0).toUpperCase()}${spaced.slice(1)}`;
}

/** The store that somebody came from stands in its field already. */
function filledIn(fields: readonly KindField[], store: string | undefined): Readonly<Record<string, string>> {
  const field = fields.find(({ name }) => name === 'store' || name === 'stores');
  return store === undefined || field === undefined ? {} : { [field.name]: store };
}
