// Name and version of this program.
import about from '../../../package.json' with { type: 'json' };

export function versionLine(): string {
  return `${about.name} ${about.version}\n`;
}
