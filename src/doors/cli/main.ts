// The program that a launcher starts: hands the words on the command line to the command that they name.
import about from '../../../package.json' with { type: 'json' };

const [word] = process.argv.slice(2);

if (word === '--version') {
  process.stdout.write(`${about.name} ${about.version}\n`);
} else {
  process.stderr.write(`${about.name} has no command "${word ?? ''}". It answers to: --version\n`);
  process.exitCode = 2;
}
