import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Finding } from '../core/visit/types.ts';
import { columnsToFinding, findingToColumns } from './findingColumns.ts';

const KINDS: readonly Finding['kind'][] = [
  'white-spot',
  'cavity',
  'dentine-radiograph',
  'enamel-radiograph',
  'root-lesion',
  'restoration',
  'restoration-defective',
  'root-exposed',
  'acid-wear',
];
const findings: fc.Arbitrary<Finding> = fc.record(
  {
    tooth: fc.constantFrom('11', '36', '55'),
    kind: fc.constantFrom(...KINDS),
    isNew: fc.boolean(),
    surface: fc.constantFrom('occlusal', 'mesial', 'distal', 'facial', 'lingual', 'root'),
    activity: fc.constantFrom('active', 'inactive', 'not-assessed'),
  },
  { requiredKeys: ['tooth', 'kind', 'isNew'] },
);

test('a finding comes back as it went in, absent parts included', () => {
  fc.assert(
    fc.property(findings, (finding) => {
      expect(columnsToFinding(findingToColumns(finding))).toEqual(finding);
      expect(Object.keys(columnsToFinding(findingToColumns(finding))).sort()).toEqual(Object.keys(finding).sort());
    }),
  );
});

test.each([
  ['cavity', { caries: 'cavity', restored: null, signs: '[]' }],
  ['restoration-defective', { caries: null, restored: 'restoration-defective', signs: '[]' }],
  ['acid-wear', { caries: null, restored: null, signs: '["acid-wear"]' }],
] as const)('%s stands in its own column', (kind, columns) => {
  expect(findingToColumns({ tooth: '11', kind, isNew: false })).toMatchObject(columns);
});
