// Codes of what can be wrong with the file that keeps a book: a door finds them, the papers have the words.

export type DiskFindingCode =
  // The file is not there, or is no book.
  | 'book-missing'
  | 'book-exists'
  | 'folder-missing'
  | 'not-a-file'
  | 'book-empty'
  | 'not-a-book'
  | 'book-foreign'
  | 'book-newer'
  // The file is a book and not whole.
  | 'book-damaged'
  | 'page-damaged'
  | 'book-altered'
  | 'recovery-needed'
  // It may not be written, or not now.
  | 'read-only'
  | 'not-permitted'
  | 'too-many-files'
  | 'book-busy'
  | 'book-moved'
  | 'disk-full'
  | 'disk-error'
  | 'writing-stopped'
  // The machinery under it is not the one that was tested.
  | 'settings-refused'
  | 'sqlite-too-old'
  // The receipt beside it.
  | 'receipt-foreign'
  | 'receipt-unreadable'
  | 'receipt-left'
  | 'receipt-not-written'
  // A copy of it.
  | 'backup-exists'
  | 'backup-not-equal';
