// One failing outpost file for each finding that there is about one.
import type { OutpostFindingCode } from '../../src/outpost/index.ts';
import { changed, SMALL_OUTPOST } from './small-outpost.ts';

const textSamples = {
  'file-too-large': `${SMALL_OUTPOST}# ${'x'.repeat(2_000_000)}\n`,
  'file-control-sign': changed('name: Skerry', 'name: Sker\u202ery'),
  'file-too-many-parts': `${SMALL_OUTPOST}x: [${'a,'.repeat(60_000)}]\n`,
  'file-too-deep': changed('kind: hut', `kind: ${'['.repeat(40)}${']'.repeat(40)}`),
  'file-scalar-too-long': changed('kind: hut', `kind: ${'hut'.repeat(1500)}`),
  'yaml-alias': changed('name: Skerry', 'name: &name Skerry'),
  'yaml-tag': changed('name: Skerry', 'name: !!str Skerry'),
  'yaml-directive': `%YAML 1.1\n---\n${SMALL_OUTPOST}`,
  'yaml-merge-key': changed('  name: Skerry', '  <<: { name: Skerry }\n  name: Skerry'),
  'yaml-more-than-one-document': `${SMALL_OUTPOST}---\nformat: waterwright outpost\n`,
  'yaml-duplicate-key': changed('  people: 2', '  people: 2\n  people: 3'),
  'yaml-tab-indent': changed('  name: Skerry', '\tname: Skerry'),
  'yaml-broken': changed('[{ port: tap }]', '[{ port: tap ]'),
  'file-empty': '# nothing yet\n',
  'key-forbidden': changed('  name: Skerry', '  __proto__: { name: Skerry }\n  name: Skerry'),
  'key-not-text': changed('  name: Skerry', '  ? [name]\n  : Skerry\n  name: Skerry'),
  'number-not-finite': changed('capacityL: 100', 'capacityL: 1e400'),
  'number-spelling': changed('capacityL: 100', 'capacityL: 0100'),
};

const shapeSamples = {
  'key-unknown': changed('capacityL: 100', 'capacityL: 100\n    capazityL: 90'),
  'key-missing': changed('    capacityL: 100\n', ''),
  'value-wrong-kind': changed('capacityL: 100', 'capacityL: 100 L'),
  'value-not-in-list': changed('kind: tank', 'kind: tanc'),
  'value-out-of-range': changed('capacityL: 100', 'capacityL: -100'),
  'value-wrong-form': changed("clockOffset: '+00:00'", 'clockOffset: UTC'),
  'list-too-short': changed('places:\n  - { id: hut }', 'places: []'),
  'flow-end-unclear': changed('{ port: tap }', '{ port: tap, store: R1 }'),
};

const crossSamples = {
  'id-twice': changed('id: C-01', 'id: w-01'),
  'id-unknown': changed('gauge: balance', 'gauge: balanse'),
  'store-id-or-ids': changed('id: C-01', 'id: C-01\n    ids: [C-02]'),
  'store-needs-key': changed('    fullAtDoubtL: 0.3\n', ''),
  'store-key-not-for-kind': changed('    capacityL: 100', '    capacityL: 100\n    wasteLimitL: 80'),
  'amount-order': changed('fillL: 20.5', 'fillL: 22.5'),
  'floor-over-reserve': changed('fillL: 90', 'fillL: 61'),
  'reserve-not-marked': changed('    reserve: true\n', ''),
  'reserve-not-counted': changed('kind: container', 'kind: container\n    reserve: true'),
  'gauge-measures-other': changed('gauge: balance', 'gauge: gauge'),
  'sum-differs': changed('tapLPerPersonDay: 3', 'tapLPerPersonDay: 3.5'),
  'date-not-real': changed('2147-03-01', '2147-02-30'),
  'limit-without-figure': changed(' atMost: 0.4,', ''),
  'limit-from-memory-on': changed('basis: outpost policy', 'basis: memory'),
  'table-not-rising': changed('{ depthMm: 100, volumeL: 40 }', '{ depthMm: 100, volumeL: 0 }'),
  'instrument-needs-key': changed(' pressureIs: absolute,', ''),
  'route-twice': changed(
    'meters: tap pump',
    'meters: tap pump, route: { from: [{ port: tap }], to: { pool: people } }',
  ),
  'grade-flow-uphill': changed('mayFlowInto: [waste], terminal', 'mayFlowInto: [waste, iodine], terminal'),
  'biocides-flow-together': changed('[drinking, waste]', '[drinking, iodine, waste]'),
  'rating-order': changed('kvM3PerH: 0.2, ratingOverCabinKPa: 200', 'kvM3PerH: 0.2, ratingOverCabinKPa: 50'),
  'findings-cut': changed('places:\n', `places:\n${'  - { id: hut }\n'.repeat(250)}`),
};

export const FAILING_SAMPLES: Readonly<Record<OutpostFindingCode, string>> = {
  ...textSamples,
  ...shapeSamples,
  ...crossSamples,
};
