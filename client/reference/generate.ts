// Writes the reference pages beside this file, from the statement table, the catalogue of rules and the table of advice:
// `npm run generate:reference`.
import { writeFileSync } from 'node:fs';
import { advicePage } from '../../language/advice/reference.ts';
import { rulesPage } from '../../language/rules/reference.ts';
import { referencePage } from '../../language/statements/reference.ts';

writeFileSync(new URL('language.md', import.meta.url), referencePage());
writeFileSync(new URL('rules.md', import.meta.url), rulesPage());
writeFileSync(new URL('advice.md', import.meta.url), advicePage());
