// Writes the reference pages beside this file, from the statement table and the catalogue: `npm run generate:reference`.
import { writeFileSync } from 'node:fs';
import { rulesPage } from '../../language/rules/reference.ts';
import { referencePage } from '../../language/statements/reference.ts';

writeFileSync(new URL('language.md', import.meta.url), referencePage());
writeFileSync(new URL('rules.md', import.meta.url), rulesPage());
