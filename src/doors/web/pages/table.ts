// Table of the pages, in the order in which they stand in the head.
export const PAGES = ['today', 'daybook', 'stores', 'quality', 'inbox', 'reckon'] as const;
