// What is said while a book is served, as lines of text.
import { servedAlready, serving, servingStopped } from '../words/en/serving.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { signed } from './signs.ts';
import { wrap } from './wrap.ts';

function lines(sentence: string, options: TextOptions): readonly string[] {
  return wrap(signed(sentence, options.style), proseWidth(options));
}

export function servingText(of: Parameters<typeof serving>[0], options: TextOptions): readonly string[] {
  return lines(serving(of), options);
}

export function servedText(options: TextOptions): readonly string[] {
  return lines(servedAlready, options);
}

export function stoppedText(options: TextOptions): readonly string[] {
  return lines(servingStopped, options);
}
