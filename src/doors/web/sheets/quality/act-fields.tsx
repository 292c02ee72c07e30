// The fields of a way out of a hold, each as its act needs it.
import type { BookNames } from '../../../../desk/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import type { HoldActName } from '../../open.ts';
import { Choices, ReasonField, TextField } from '../../parts/fields.tsx';
import type { ActField, Filled, Offered } from './act-request.ts';
import { StoreChoices } from './store-choices.tsx';

interface Told {
  readonly act: HoldActName;
  readonly needs: readonly ActField[];
  readonly filled: Filled;
  readonly offered: readonly Offered[];
  readonly onChange: (filled: Filled) => void;
}

export function ActFields(told: Told) {
  return told.needs.map((name) => <One key={name} name={name} {...told} />);
}

function One({ name, act, filled, offered, onChange }: Told & { readonly name: ActField }) {
  const { quality } = words();
  const names = useSheet<BookNames>('/api/offices').data;
  const set = (change: Partial<Filled>) => onChange({ ...filled, ...change });
  const text = (field: Exclude<ActField, 'stores' | 'store'>, label: string, hint: string) => (
    <TextField
      label={label}
      hint={hint}
      value={filled[field] ?? ''}
      onChange={(value) => set({ [field]: value })}
    />
  );
  switch (name) {
    case 'stores':
      return (
        <StoreChoices
          label={quality.stores}
          {...(act !== 'add' && { hint: quality.noneChosen })}
          stores={offered}
          chosen={filled.stores}
          onChange={(stores) => set({ stores })}
        />
      );
    case 'store':
      return (
        <Choices
          label={quality.store}
          value={filled.stores[0] ?? null}
          options={offered.map(({ store }) => ({ value: store, text: store }))}
          onChange={(store) => set({ stores: [store] })}
        />
      );
    case 'owner':
      return (
        <Choices
          label={quality.owner}
          value={filled.owner ?? null}
          options={(names?.offices ?? []).map((office) => ({ value: office, text: office }))}
          onChange={(owner) => set({ owner })}
        />
      );
    case 'reason':
      return (
        <ReasonField
          label={quality.reasonOf}
          usual={usualOf(act)}
          value={filled.reason ?? ''}
          onChange={(reason) => set({ reason })}
        />
      );
    case 'until':
      return text('until', quality.until, act === 'release' ? quality.untilHintFree : quality.untilHint);
    case 'grade':
      return text('grade', quality.grade, quality.gradeHint);
    case 'recipe':
      return text('recipe', quality.recipe, quality.recipeHint);
    case 'dose':
      return text('dose', quality.dose, quality.doseHint);
    case 'sample':
      return text(
        'sample',
        quality.sampleField,
        act === 'add' ? quality.sampleHint : quality.sampleAsideHint,
      );
    case 'parameter':
      return text('parameter', quality.parameter, quality.parameterHint);
  }
}

function usualOf(act: HoldActName): readonly string[] {
  const { quality } = words();
  if (act === 'waive') return quality.waiveReasons;
  if (act === 'park') return quality.parkReasons;
  return act === 'aside' ? quality.asideReasons : quality.holdReasons;
}
