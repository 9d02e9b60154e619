import { writeFileSync } from 'node:fs';
import { renderLeafletPdf } from '../../src/cli/leafletPdf.tsx';
import { demoShelf } from '../../src/content/demo/shelf.ts';
import { leafletTable } from '../../src/content/texts/leafletTable.ts';
import { buildCase } from './buildCase.ts';
import { caseShelf, demoCases, leafletCases } from './leafletCases.ts';

for (const [k, one] of [...leafletCases, ...demoCases].entries())
  for (const language of ['en', 'es'] as const)
    for (const page of ['A4', 'LETTER'] as const)
      try {
        writeFileSync(
          `/tmp/pdf/${k}-${language}-${page}.pdf`,
          await renderLeafletPdf(buildCase(one, language, leafletTable, [...caseShelf, ...demoShelf]), { page }),
        );
      } catch (e) {
        console.log(k, language, page, String(e));
      }
