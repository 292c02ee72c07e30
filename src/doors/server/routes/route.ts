// What a route is: an address, what it takes and answers as schemas, and the desk's function behind it.
import type * as z from 'zod';
import type { Answer } from '../../../desk/index.ts';
import type { ServedBook } from '../served-book.ts';

type Fields = Readonly<Record<string, z.ZodType>>;
type ValuesOf<F extends Fields> = { readonly [K in keyof F]: z.output<F[K]> };

export interface RouteOf<Params extends Fields, Query extends Fields, Body extends z.ZodType> {
  readonly method: 'get' | 'post';
  /** As OpenAPI writes it: `/api/stores/{id}`. */
  readonly path: string;
  /** A sentence. */
  readonly does: string;
  /** The name of the data in the answer. */
  readonly schema: string;
  readonly params: Params;
  readonly query: Query;
  readonly body: Body | null;
  /** A body that may carry a file. */
  readonly takesFile?: true;
  readonly answer: z.ZodType;
  /** Adds to the book, so that whoever listens hears of it. */
  readonly keeps?: true;
  /** The status of an answer that is not a refusal. */
  readonly statusOf: (data: unknown) => 200 | 201;
  /** A request that fits, for the description and for its test. */
  readonly example: Example;
  readonly run: (
    served: ServedBook,
    asked: {
      readonly params: ValuesOf<Params>;
      readonly query: ValuesOf<Query>;
      readonly body: z.output<Body>;
    },
  ) => Promise<Answer<unknown>>;
}

export interface Example {
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string>>;
  readonly body?: unknown;
}

/** Any route, its types forgotten: the server has checked what it gives to `run`. */
export type Route = RouteOf<Fields, Fields, z.ZodType>;

type Written<P extends Fields, Q extends Fields, B extends z.ZodType> = Omit<
  RouteOf<P, Q, B>,
  'params' | 'query' | 'body' | 'statusOf' | 'example'
> &
  Partial<Pick<RouteOf<P, Q, B>, 'params' | 'query' | 'body' | 'statusOf' | 'example'>>;

/** Fills in what a route does not say. */
export function route<
  P extends Fields = Record<never, never>,
  Q extends Fields = Record<never, never>,
  B extends z.ZodType = z.ZodNever,
>(written: Written<P, Q, B>): Route {
  return {
    params: {},
    query: {},
    body: null,
    statusOf: () => 200,
    example: {},
    ...written,
  } as unknown as Route;
}
