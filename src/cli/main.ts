import { Command } from 'commander';
import packageJson from '../../package.json' with { type: 'json' };

const program = new Command('ebbline').description(packageJson.description).version(packageJson.version);

await program.parseAsync();
