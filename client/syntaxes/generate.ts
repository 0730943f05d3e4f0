// Writes rig.tmLanguage.json beside this file from the statement table: `npm run generate:colours`.
import { writeFileSync } from 'node:fs';
import { vocabulary } from '../../language/statements/vocabulary.ts';
import { printGrammar } from './grammar.ts';

writeFileSync(new URL('rig.tmLanguage.json', import.meta.url), printGrammar(vocabulary));
