import type { Source } from './sources.ts';

/** Sources of the leaflet: how items are used, and the readability formulas that its words are held to. */
export const leafletSources: Readonly<Record<string, Source>> = {
  'leaflet-paste': {
    cite: 'American Academy of Pediatrics and American Dental Association advice on fluoride toothpaste: brush twice a day, spit, do not rinse.',
    read: 'topic pages',
  },
  'leaflet-paste-2800': {
    cite: 'UK summary of product characteristics, toothpaste with sodium fluoride 0.619 %, sections 4.1 to 4.3.',
    read: 'the sections named',
  },
  'leaflet-paste-5000': {
    cite: 'UK summary of product characteristics, toothpaste with sodium fluoride 1.1 %, 2015, sections 4.1 to 4.3.',
    read: 'the sections named',
  },
  'leaflet-rinse-005': {
    cite: 'US Drug Facts label and UK summary of product characteristics, sodium fluoride 0.05 % rinse.',
    read: 'dosing lines',
  },
  'leaflet-chlorhexidine': {
    cite: 'US label, chlorhexidine gluconate 0.12 % rinse; UK summary of product characteristics, 0.2 % rinse; Kolahi J, Soolari A. 2006, on keeping it apart from paste.',
    read: 'labels: dosing and warnings; paper: abstract',
  },
  'leaflet-polyol': {
    cite: 'Rethman MP and others. Nonfluoride caries-preventive agents. J Am Dent Assoc 2011;142(9):1065-1071.',
    read: 'recommendations: gum 10 to 20 minutes after meals, lozenges after meals, from 5 years',
  },
  'leaflet-bicarbonate': {
    cite: 'US National Cancer Institute, PDQ summary on oral complications: half a teaspoon each of salt and baking soda in one cup of warm water.',
    read: 'a copy of the summary',
  },
  'leaflet-varnish': {
    cite: 'UK and New Zealand medicine summaries, dental suspension with sodium fluoride 5 %.',
    read: 'dosing and advice after use',
  },
  'leaflet-convention': { cite: 'Usual instruction on packs of this kind; no document was read.', read: 'nothing; from memory' },
  'leaflet-words': { cite: 'This project: own wording of an instruction, without a figure.', read: 'not applicable' },
  'rae-ortografia-2010': {
    cite: 'Real Academia Española and Asociación de Academias. Ortografía de la lengua española. Madrid: Espasa, 2010: diphthong, hiatus, triphthong.',
    read: 'secondary: five school summaries that give the rules and examples alike',
  },
  'fernandez-huerta-1959': {
    cite: 'Fernández Huerta J. Medidas sencillas de lecturabilidad. Consigna 1959;(214):29-32.',
    read: 'secondary: formula and table of grades at legible.es (70 to 80 = "algo fácil", 6th grade)',
  },
  'law-2011': {
    cite: 'Law G. Error in the Fernandez Huerta readability formula. Linguist List 22.2332, 2 June 2011.',
    read: 'the message: the last term is words per sentence',
  },
  'szigriszt-1993': {
    cite: 'Szigriszt Pazos F. Sistemas predictivos de legibilidad del mensaje escrito: fórmula de perspicuidad. Thesis, Universidad Complutense de Madrid, 1993.',
    read: 'secondary: formula and table of ages at legible.es (66 to 75 = 12 years)',
  },
  'barrio-2008': {
    cite: 'Barrio-Cantalejo IM, Simón-Lorda P, Melguizo M, Escalona I, Marijuán MI, Hernando P. Validación de la Escala INFLESZ. An Sist Sanit Navar 2008;31(2):135-152.',
    read: 'abstract; bands from a secondary table (65 to 80 = "bastante fácil")',
  },
  'kandel-moles-1958': {
    cite: 'Kandel L, Moles A. Application de l’indice de Flesch à la langue française. Cahiers d’Études de Radio-Télévision 1958;(19):253-274.',
    read: 'secondary: formula in the documents of a prose checker (207 - 1.015 words per sentence - 73.6 syllables per word), named with the same authors in those of a text package; bands of Flesch’s own scale (70 to 80 = "fairly easy")',
  },
  'kincaid-1975': {
    cite: 'Kincaid JP, Fishburne RP, Rogers RL, Chissom BS. Derivation of new readability formulas for Navy enlisted personnel. Research Branch Report 8-75, 1975.',
    read: 'secondary: formula on four pages that agree, with one worked example (13 words, 24 syllables = 11.3)',
  },
  'mclaughlin-1969': {
    cite: 'McLaughlin GH. SMOG grading: a new readability formula. Journal of Reading 1969;12(8):639-646.',
    read: "the author's web page and secondary pages: formula with 1.043 and 3.1291",
  },
};
