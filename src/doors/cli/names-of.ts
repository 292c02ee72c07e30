// Names with commas between, as a flag takes several of them.

export function namesOf(text: string | undefined): readonly string[] {
  return (text ?? '')
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '');
}
