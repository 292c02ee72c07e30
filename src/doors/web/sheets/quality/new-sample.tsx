// A sample that was drawn: of stores or at a point, its tests and its bottles.
import { type FormEvent, useState } from 'react';
import { useEntrance } from '../../entering.ts';
import { words } from '../../language.ts';
import { TextField } from '../../parts/fields.tsx';
import { Refusal } from '../../parts/refusal.tsx';
import { SaveRow } from '../../parts/save-row.tsx';
import { WhenField } from '../../parts/when-field.tsx';
import { SAMPLES } from './entrances.ts';
import { PlacePicker } from './place-picker.tsx';

const listIn = (text: string): readonly string[] =>
  text
    .split(',')
    .map((each) => each.trim())
    .filter((each) => each !== '');

export function NewSample({ named }: { readonly named: string | undefined }) {
  const { quality, log } = words();
  const [of, setOf] = useState(named ?? '');
  const [tests, setTests] = useState('');
  const [bottles, setBottles] = useState('');
  const [name, setName] = useState('');
  const [volume, setVolume] = useState('');
  const [drawnFrom, setDrawnFrom] = useState('');
  const [at, setAt] = useState('');
  const [note, setNote] = useState('');
  const entering = useEntrance(SAMPLES);
  const places = listIn(of);
  const toggle = (place: string) =>
    setOf((places.includes(place) ? places.filter((each) => each !== place) : [...places, place]).join(', '));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const [testList, bottleList] = [listIn(tests), listIn(bottles)];
    const request = {
      of: places,
      ...(name.trim() !== '' && { sample: name.trim() }),
      ...(testList.length > 0 && { tests: testList }),
      ...(bottleList.length > 0 && { bottles: bottleList }),
      ...(volume.trim() !== '' && { volume: volume.trim() }),
      ...(drawnFrom.trim() !== '' && { drawnFrom: drawnFrom.trim() }),
    };
    const more = { ...(at !== '' && { at }), ...(note.trim() !== '' && { note: note.trim() }) };
    void entering.save(request, more);
  };
  return (
    <form className="stack" onSubmit={submit}>
      <Refusal entering={entering} />
      <PlacePicker
        label={quality.ofDrawn}
        value={of}
        onChange={setOf}
        onTap={toggle}
        first={named === undefined}
        withSamples={false}
        chosen={places}
      />
      <p className="xs soft">{quality.tapToAdd}</p>
      <div className="two">
        <TextField
          label={quality.tests}
          value={tests}
          onChange={setTests}
          hint={quality.testsNote}
          first={named !== undefined}
        />
        <TextField label={quality.bottles} value={bottles} onChange={setBottles} hint={quality.bottlesNote} />
        <TextField label={quality.volumeOf} value={volume} onChange={setVolume} hint={quality.volumeHint} />
        <TextField
          label={quality.drawnFrom}
          value={drawnFrom}
          onChange={setDrawnFrom}
          hint={quality.drawnNote}
        />
        <TextField label={quality.sampleName} value={name} onChange={setName} hint={quality.sampleNameNote} />
        <TextField label={log.note} value={note} onChange={setNote} />
      </div>
      <WhenField value={at} onChange={setAt} />
      <SaveRow
        entering={entering}
        disabled={places.length === 0}
        label={quality.saveSample(Math.max(1, places.length))}
      />
    </form>
  );
}
