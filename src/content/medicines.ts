import type { SourceRef } from '../core/visit/answer.ts';

/** A class of medicines that the safety check asks for. A class is asked, not a product; nobody is told to stop one. */
export interface MedicineClass {
  readonly id: string;
  readonly label: string;
  /** Named in the literature as lowering saliva flow. */
  readonly driesMouth: boolean;
  /** Lowers blood glucose: food and drink are never dropped, delayed or limited. */
  readonly glucoseLowering: boolean;
  readonly source: SourceRef;
}

const drying: SourceRef = { key: 'dryingMedicines', status: 'memory' };
const asked: SourceRef = { key: 'project', status: 'proposal', note: 'asked because a safety rule looks for it' };

/** Classes in the order in which they are offered; "another medicine" leaves the question of saliva open. */
export const medicineClasses: readonly MedicineClass[] = [
  { id: 'tricyclic-antidepressant', label: 'Tricyclic antidepressant', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'ssri-snri', label: 'Antidepressant, SSRI or SNRI', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'antipsychotic', label: 'Antipsychotic', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'benzodiazepine', label: 'Benzodiazepine', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'opioid', label: 'Opioid', driesMouth: true, glucoseLowering: false, source: drying },
  {
    id: 'first-generation-antihistamine',
    label: 'Older (sedating) antihistamine',
    driesMouth: true,
    glucoseLowering: false,
    source: drying,
  },
  { id: 'bladder-antimuscarinic', label: 'Bladder antimuscarinic', driesMouth: true, glucoseLowering: false, source: drying },
  {
    id: 'antiparkinson-anticholinergic',
    label: 'Anticholinergic for Parkinson disease',
    driesMouth: true,
    glucoseLowering: false,
    source: drying,
  },
  { id: 'diuretic', label: 'Diuretic', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'ace-inhibitor', label: 'ACE inhibitor', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'beta-blocker', label: 'Beta-blocker', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'clonidine-alpha-agonist', label: 'Clonidine or another alpha-agonist', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'inhaler', label: 'Inhaler, beta2-agonist or anticholinergic', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'decongestant', label: 'Decongestant', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'stimulant', label: 'Stimulant, as for ADHD', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'anticonvulsant', label: 'Anticonvulsant', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'isotretinoin', label: 'Isotretinoin', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'proton-pump-inhibitor', label: 'Proton-pump inhibitor', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'muscle-relaxant', label: 'Muscle relaxant', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'cytotoxic', label: 'Cytotoxic medicine', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'hiv-protease-inhibitor', label: 'HIV protease inhibitor', driesMouth: true, glucoseLowering: false, source: drying },
  { id: 'glp-1-agonist', label: 'GLP-1 agonist', driesMouth: true, glucoseLowering: true, source: drying },
  { id: 'insulin', label: 'Insulin', driesMouth: false, glucoseLowering: true, source: asked },
  { id: 'other-glucose-lowering', label: 'Another glucose-lowering medicine', driesMouth: false, glucoseLowering: true, source: asked },
  { id: 'thyroid-medicine', label: 'Thyroid medicine', driesMouth: false, glucoseLowering: false, source: asked },
  { id: 'lithium', label: 'Lithium', driesMouth: false, glucoseLowering: false, source: asked },
  { id: 'disulfiram-or-metronidazole', label: 'Disulfiram or metronidazole', driesMouth: false, glucoseLowering: false, source: asked },
  { id: 'antacid-or-calcium', label: 'Antacid or calcium', driesMouth: false, glucoseLowering: false, source: asked },
  { id: 'mercury-product', label: 'Product with mercury', driesMouth: false, glucoseLowering: false, source: asked },
  { id: 'other', label: 'Another medicine, class not known here', driesMouth: false, glucoseLowering: false, source: asked },
];

/** Classes that lower saliva flow, by id. */
export const dryingMedicineIds: readonly string[] = medicineClasses.filter((m) => m.driesMouth).map((m) => m.id);

/** Classes that lower blood glucose, by id. */
export const glucoseLoweringMedicineIds: readonly string[] = medicineClasses.filter((m) => m.glucoseLowering).map((m) => m.id);

/** The id that says: takes something, class not known; whether it dries the mouth or lowers glucose is unknown. */
export const UNCLASSIFIED_MEDICINE = 'other';

/** A medicine that tells of alcohol is private with it. */
export const PRIVATE_MEDICINES: readonly string[] = ['disulfiram-or-metronidazole'];
