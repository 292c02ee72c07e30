// Codes of what can be wrong with entries that ask to be kept.

export type BookFindingCode =
  | 'kind-unknown'
  | 'field-unknown'
  | 'field-wrong'
  | 'shape-newer'
  | 'id-reused'
  | 'number-reused'
  | 'seal-broken'
  | 'chain-gap'
  | 'line-no-json'
  | 'chain-broken'
  | 'columns-differ'
  | 'text-not-canonical'
  | 'receipt-ahead'
  | 'receipt-differs';
