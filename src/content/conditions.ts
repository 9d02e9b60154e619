import type { Choice } from '../core/visit/question.ts';

/**
 * Conditions that are asked for, because a list, a safety rule or a limit on advice depends on them. The rules stand with the regimen
 * tables; which conditions are asked is our choice. Entered as two lists, so that the private one can be kept from view.
 */
export const openConditions: readonly Choice[] = [
  { id: 'asthma', label: 'Asthma' },
  { id: 'asthma-severe', label: 'Asthma, in hospital for it in the last 12 months' },
  { id: 'sjogren', label: 'Whole-body cause of dry mouth, such as Sjögren disease' },
  { id: 'head-neck-radiotherapy', label: 'Radiotherapy of head or neck, ever' },
  { id: 'head-neck-cancer', label: 'Cancer of head or neck' },
  { id: 'chemotherapy', label: 'Chemotherapy now' },
  { id: 'salivary-glands-lost', label: 'Salivary glands removed or not working' },
  { id: 'diabetes-glucose-lowering', label: 'Diabetes, with insulin or another glucose-lowering medicine' },
  { id: 'reflux', label: 'Reflux' },
  { id: 'phenylketonuria', label: 'Phenylketonuria' },
  { id: 'hereditary-fructose-intolerance', label: 'Hereditary fructose intolerance' },
  { id: 'irritable-bowel', label: 'Irritable bowel' },
  { id: 'kidney-disease-4-5', label: 'Kidney disease, stage 4 or 5, or dialysis' },
  { id: 'kidney-disease', label: 'Kidney disease, another or unknown stage' },
  { id: 'thyroid', label: 'Thyroid disease' },
  { id: 'thyroid-scan-or-radio-iodine', label: 'Thyroid scan or radio-iodine, planned or recent' },
  { id: 'heart-failure-hypertension-sodium-restricted', label: 'Heart failure, high blood pressure or low-salt diet' },
  { id: 'heart-disease', label: 'Other heart disease' },
  { id: 'chronic-bronchitis', label: 'Chronic bronchitis or other lung disease' },
  { id: 'gallstones-or-kidney-stones', label: 'Gallstones or kidney stones' },
  { id: 'liver-severe', label: 'Severe liver disease' },
  { id: 'glaucoma', label: 'Angle-closure glaucoma or iritis' },
  { id: 'ulcerative-gingivitis', label: 'Ulcerative gingivitis' },
  { id: 'stomatitis-mucositis', label: 'Sore or ulcerated mouth' },
  { id: 'tooth-nerve-infection', label: 'Tooth pain, abscess or fistula' },
  { id: 'swallowing-difficulty', label: 'Difficulty swallowing' },
  { id: 'cannot-spit', label: 'Cannot spit out reliably' },
  { id: 'jaw-joint-pain', label: 'Jaw joint pain' },
  { id: 'tube-or-supplement-feeding', label: 'Fed by tube or with supplements' },
  { id: 'special-care-needs', label: 'Disability or illness that limits daily mouth care' },
  { id: 'religious-no-alcohol', label: 'Avoids alcohol in products' },
  { id: 'titanium-implants', label: 'Implants' },
  { id: 'porcelain-or-composite', label: 'Crowns, veneers or tooth-coloured fillings' },
];

/** Asked like the others; hidden by "Show patient" and never on a leaflet. */
export const privateConditions: readonly Choice[] = [
  { id: 'eating-disorder', label: 'Eating disorder' },
  { id: 'vomiting-often', label: 'Frequent vomiting' },
  { id: 'pregnancy-sickness', label: 'Sickness of pregnancy' },
  { id: 'underweight', label: 'Underweight, or losing weight' },
  { id: 'alcohol-use-or-recovery', label: 'Alcohol problem, now or in recovery' },
  { id: 'drug-or-alcohol-misuse', label: 'Drug or alcohol misuse now' },
  { id: 'recreational-drugs', label: 'Recreational drugs' },
  { id: 'cognitive-impairment', label: 'Memory or understanding impaired' },
  { id: 'suicide-risk', label: 'Risk of self-harm' },
];

/** Both lists together: the ids that `PersonFacts.conditions` may hold. */
export const conditions: readonly Choice[] = [...openConditions, ...privateConditions];
