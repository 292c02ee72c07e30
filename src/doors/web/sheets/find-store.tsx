// Find a store by its number or a part of its name: type, and Enter opens the first that fits.

import { useState } from 'react';
import { Autocomplete, Input, ListBox, ListBoxItem, SearchField } from 'react-aria-components';
import type { StoresSheet } from '../../../papers/index.ts';
import { useSheet } from '../api/cache.ts';
import { words } from '../language.ts';
import { closeSheet } from '../open.ts';
import { Dialog } from '../parts/dialog.tsx';
import { StillQuantity } from '../parts/figure.tsx';
import { GradeBadge } from '../parts/grade.tsx';
import { matching } from '../parts/store-picker.tsx';
import { go, type Place, sheetPath } from '../place.ts';

const MOST = 12;

/**
 * The package would write a style sheet of its own into the page, which the page's policy refuses; it does not where an
 * element of this name is there already. What it would have said stands in sheets.css.
 */
const OF_THE_PACKAGE = 'react-aria-pressable-style';

function keepStylesOut(): void {
  if (document.getElementById(OF_THE_PACKAGE) !== null) return;
  document.head.append(Object.assign(document.createElement('template'), { id: OF_THE_PACKAGE }));
}

keepStylesOut();

export function FindStore({ place }: { readonly place: Place }) {
  const { find } = words();
  const stores = useSheet<StoresSheet>(sheetPath('stores', place)).data?.stores ?? [];
  const [typed, setTyped] = useState('');
  const found = matching(stores, typed).slice(0, MOST);
  const open = (id: string) => {
    closeSheet();
    go({ page: 'stores', item: id, at: place.at, asOf: place.asOf });
  };
  return (
    <Dialog title={find.title}>
      <Autocomplete inputValue={typed} onInputChange={setTyped}>
        <SearchField aria-label={find.hint} className="field">
          <Input className="f wide-f" placeholder={find.hint} data-first />
        </SearchField>
        <ListBox
          className="found"
          aria-label={find.title}
          items={found}
          renderEmptyState={() => find.none}
          onAction={(key) => open(`${key}`)}
        >
          {(store) => (
            <ListBoxItem id={store.id} textValue={store.id} className="found-item">
              <GradeBadge grade={store.grade} /> <b>{store.id}</b> <StillQuantity figure={store.volume} />
              <span className="xs soft">{store.mark}</span>
            </ListBoxItem>
          )}
        </ListBox>
      </Autocomplete>
    </Dialog>
  );
}
