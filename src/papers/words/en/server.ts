// English for what can be wrong with a request to the server.
import type { FindingData, Where } from '../../../ground/units/index.ts';
import type { ServerFindingCode } from '../server-codes.ts';
import type { Words } from '../shape.ts';
import { listOf, maybeText, numberOf, textOf } from './data.ts';
import { counted, listed } from './said.ts';
import { say } from './say.ts';
import { saidWanted } from './wanted.ts';

const nothing = 'Nothing was done.';
const described = 'What each address takes: /api/openapi.json.';
const field = (where: Where): string => where.field ?? 'the request';

function meant(near: readonly string[], otherwise: string): string {
  return near.length === 0 ? otherwise : `Did you mean ${listed(near, 'or')}? ${otherwise}`;
}

/** `1 MB`: caps are round numbers of bytes. */
function size(bytes: number): string {
  return bytes < 1_000_000 ? counted(bytes, 'byte') : `${Math.round(bytes / 1_000_000)}\u00A0MB`;
}

const part = (data: FindingData): string => (textOf(data, 'part') === 'body' ? 'body' : 'query');

const whoAsks: Words<
  Extract<ServerFindingCode, `host-${string}` | 'cross-site' | 'token-needed' | `launch-${string}`>
> = {
  'host-refused': (data) =>
    say(
      `This server answers for ${listed(listOf(data, 'allowed'), 'or')} and for no other name. ${nothing}`,
      listed(listOf(data, 'allowed'), 'or'),
      `"${textOf(data, 'host')}"`,
      'Open the address that `serve` has printed.',
    ),
  'cross-site': (data) =>
    say(
      `Another page asked for this, and pages of other origins may not. ${nothing}`,
      'a request from the page of this server',
      textOf(data, 'origin'),
      'Open the address that `serve` has printed, and work there.',
    ),
  'token-needed': () =>
    say(
      `This page has not been let in yet, or the server was started anew. ${nothing}`,
      'the cookie of this server, or its token behind Authorization: Bearer',
      'neither',
      'Open a fresh address: waterwright serve prints one, also when the book is served already.',
    ),
  'launch-token-spent': () =>
    say(
      'This address has let a page in already, or is not one of this server.',
      'a launch token that was not used yet',
      'another one',
      'Get a fresh address: waterwright serve prints one, also when the book is served already.',
    ),
};

const howAsked: Words<
  Exclude<ServerFindingCode, keyof typeof whoAsks | `request-${string}` | `server-${string}` | 'no-port-free'>
> = {
  'address-unknown': (data) =>
    say(
      `There is nothing at ${textOf(data, 'path')}.`,
      'an address of this server',
      textOf(data, 'path'),
      meant(listOf(data, 'nearest'), 'All addresses: /api/openapi.json.'),
    ),
  'method-wrong': (data) =>
    say(
      `This address does not take ${textOf(data, 'method')}. ${nothing}`,
      listed(listOf(data, 'allowed'), 'or'),
      textOf(data, 'method'),
      described,
    ),
  'not-json': (data) =>
    say(
      `What is to be done has to come as JSON. ${nothing}`,
      'Content-Type: application/json',
      maybeText(data, 'type') ?? 'no type',
      'Say the type in the header Content-Type.',
    ),
  'body-unreadable': (data) =>
    say(
      `The body is no JSON in UTF-8. ${nothing}`,
      'one JSON object',
      textOf(data, 'says'),
      `Send the object alone. ${described}`,
    ),
  'body-too-large': (data) =>
    say(
      `The body is larger than ${size(numberOf(data, 'most'))}. ${nothing}`,
      `at most ${size(numberOf(data, 'most'))}`,
      'more',
      'Send it in parts.',
    ),
};

const whatIsAsked: Words<
  Extract<ServerFindingCode, `request-${string}` | 'server-crowded' | 'server-failed'>
> = {
  'request-field-wrong': (data, where) => {
    const wanted = saidWanted(data, 'the request');
    return say(
      `"${field(where)}" in the ${part(data)} does not fit: ${wanted} is wanted. ${nothing}`,
      wanted,
      maybeText(data, 'received') ?? 'nothing',
      `Give ${wanted}. ${described}`,
    );
  },
  'request-field-unknown': (data, where) =>
    say(
      `This address has no "${field(where)}" in its ${part(data)}. ${nothing}`,
      'fields of this request only',
      `"${field(where)}"`,
      meant(listOf(data, 'nearest'), described),
    ),
  'request-fields-clash': (data) =>
    say(
      `"${textOf(data, 'first')}" and "${textOf(data, 'second')}" say two different things. ${nothing}`,
      'one of the two',
      'both',
      `Leave "${textOf(data, 'first')}" or "${textOf(data, 'second')}" out.`,
    ),
  'server-crowded': () =>
    say(
      `Too many requests wait at once. ${nothing}`,
      'fewer at once',
      'more than the server holds',
      'Ask again in a moment.',
    ),
  'server-failed': (data) =>
    say(
      `The server itself failed at this request (${textOf(data, 'says')}).`,
      'an answer',
      'a fault of the program',
      'What was acknowledged before is safe. Look at what the server printed, and start it anew: waterwright serve.',
    ),
};

const throughServer: Words<
  Extract<ServerFindingCode, 'server-silent' | 'server-refused' | 'server-of-other-build' | 'no-port-free'>
> = {
  'server-silent': (data) =>
    say(
      `The server at ${textOf(data, 'address')} holds this book and does not answer.`,
      'an answer',
      textOf(data, 'says'),
      data['mayBeKept'] === true
        ? 'It may have kept the entry before it fell silent. Look first: waterwright book show --most 3.'
        : 'Try again; if it stays so, end the server with Ctrl-C where it runs, and start it anew: waterwright serve.',
    ),
  'server-refused': (data) =>
    say(
      `The server at ${textOf(data, 'address')} holds this book and did not do what was asked.`,
      'an answer',
      `status ${numberOf(data, 'status')}, ${textOf(data, 'says')}`,
      'End the server with Ctrl-C where it runs, and start it anew: waterwright serve.',
    ),
  'server-of-other-build': (data) =>
    say(
      `The server at ${textOf(data, 'address')} holds this book and is another version of this program. Nothing was written.`,
      'a server of the same version',
      'another one',
      'End the server with Ctrl-C where it runs, and start it anew: waterwright serve.',
    ),
  'no-port-free': (data) =>
    say(
      `No port from ${numberOf(data, 'first')} to ${numberOf(data, 'last')} is free on this machine.`,
      'a free port',
      'none',
      'Name another one: waterwright serve --port N.',
    ),
};

export const serverWords: Words<ServerFindingCode> = {
  ...whoAsks,
  ...howAsked,
  ...whatIsAsked,
  ...throughServer,
};
