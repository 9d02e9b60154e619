/**
 * How a question is put on the sheet for the waiting room, in our own plain words. `in-the-room`: better asked or seen by the
 * professional. Private questions are not here: none of them is put on paper. In English only, like the questions themselves.
 */
export const sheetWords: Readonly<Record<string, string | 'in-the-room'>> = {
  medicines: 'Which medicines do you take? Name those without a prescription too.',
  allergies: 'What are you allergic to?',
  conditions: 'Which illnesses do you have? Which treatments have you had?',
  weight_kg: 'How much does your child weigh, in kilograms?',
  can_spit: 'Does your child spit everything out after brushing?',
  snacks_per_day: 'How many snacks and sweet drinks did you have between meals yesterday?',
  sugars_at_meals: 'Do you have sweet things mostly with meals?',
  bottle: 'Does your child use a bottle, or a cup with a lid?',
  paste_times_per_day: 'How many times a day are the teeth brushed with a fluoride paste?',
  paste_strength: 'How strong is the paste? It stands on the tube.',
  home_extras: 'What else do you use for your teeth?',
  professional_fluoride: 'Was fluoride put on your teeth in the last 6 months?',
  water_fluoridated: 'Does your tap water have fluoride added to it?',
  water_drunk: 'Does your child drink tap water?',
  water_fluoride_mg_per_l: 'in-the-room',
  xylitol_carer: 'Does the mother or main carer chew xylitol gum 2 to 4 times a day?',
  household: 'Is one of these at home?',
  dry_mouth: 'Does your mouth feel dry?',
  tobacco: 'Do you use one of these?',
  dental_home: 'Do you see a dentist regularly, here or elsewhere?',
  family_decay_months: 'When did anyone in the family last have tooth decay? How many months ago?',
  carer_decay_12m: 'Did the mother or main carer have tooth decay in the last 12 months?',
  filling_recent: 'Did you get a filling or crown for decay in the last 12 months? If you are new here: in the last 3 years?',
  filling_24m: 'Did your child get a filling or crown for decay in the last 2 years?',
  filling_24m_at_6: 'Did your child get a filling or crown for decay in the last 2 years?',
  lesions_3y: 'in-the-room',
  milk_teeth_dmf: 'in-the-room',
  tooth_lost_to_decay: 'Was a tooth taken out because of decay in the last 3 years? Under age 7: in the last 2 years?',
};
