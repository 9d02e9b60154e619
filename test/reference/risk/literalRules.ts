/**
 * The six lists written out once more, line by line as their rules read, without tables: an oracle for the evaluator of
 * `src/core/risk`. It shares no code with it. Absent = unknown, and unknown ticks nothing.
 */
export type Given = Readonly<Record<string, boolean | number | undefined>>;
type Rules = Readonly<Record<string, (g: Given, ageYears: number) => string>>;

const yes = (g: Given, item: string) => g[item] === true;
const no = (g: Given, item: string) => g[item] === false;
const n = (g: Given, item: string) => (typeof g[item] === 'number' ? (g[item] as number) : Number.NaN);
const ticks = (g: Given, items: string) => items.split(' ').filter((item) => yes(g, item)).length;
const one = (condition: boolean) => (condition ? 1 : 0);

/** Risk and protection weighed without a disease tick: our own numbers. */
function weigh(risk: number, protective: number, mayBeLow: boolean, high: string): string {
  const net = risk - protective;
  if (risk <= 1 && net <= -2 && mayBeLow) return 'low';
  if (risk >= 4 && net >= 1) return high;
  return 'moderate';
}

/** Column with most ticks; a tie goes to the higher; low is lifted while the high column holds a tick; nothing ticked is moderate. */
function fullest(high: number, moderate: number, low: number): string {
  if (high + moderate + low === 0) return 'moderate';
  const most = Math.max(high, moderate, low);
  if (most === high) return 'high';
  if (most === moderate) return 'moderate';
  return high > 0 ? 'moderate' : 'low';
}

/** 10 when one line is high or the total is 10 or more. */
function scored(points: readonly number[]): string {
  const score = points.reduce((sum, p) => sum + p, 0);
  if (points.includes(10) || score >= 10) return 'high';
  return score >= 1 ? 'moderate' : 'low';
}

const familyPoints = (months: number) => (months <= 6 ? 10 : months <= 23 ? 1 : 0);

export const literalRules: Rules = {
  four_level_6plus_2019(g) {
    const disease = ticks(
      g,
      'lesion_cavity_or_dentin_new lesion_white_spot_smooth_new lesion_enamel_radiographic_new restoration_for_decay_recent',
    );
    const dry = yes(g, 'saliva_flow_reduced_measured');
    if (disease >= 1) return dry ? 'extreme' : 'high';
    const dries = ticks(g, 'medicine_saliva_reducing saliva_reducing_condition chemo_radiotherapy') > 0;
    const risk =
      ticks(
        g,
        'biofilm_bacteria_high plaque_heavy_visible saliva_flow_reduced_measured pits_fissures_deep drug_recreational roots_exposed appliance_orthodontic_or_removable',
      ) +
      one(n(g, 'snacks_between_meals_per_day') > 3) +
      one(dries);
    const protective = ticks(
      g,
      'water_fluoridated toothpaste_f_once_daily toothpaste_f_twice_daily toothpaste_f_5000 varnish_f_6m rinse_naf_005_daily rinse_chx_monthly_week saliva_normal',
    );
    const suspect = ticks(g, 'saliva_reducing_condition chemo_radiotherapy') > 0 && !yes(g, 'saliva_normal');
    return weigh(risk, protective, !dry && !suspect, dry ? 'extreme' : 'high');
  },

  four_level_0_5_2010(g) {
    const lifted = ticks(g, 'saliva_visually_inadequate medicine_saliva_reducing special_care_needs') > 0;
    const high = lifted ? 'extreme' : 'high';
    if (ticks(g, 'decay_or_white_spot_evident_child restoration_for_decay_recent caregiver_decay_12m') > 0) return high;
    const risk =
      ticks(
        g,
        'bottle_sugared_fluid bottle_continual bottle_in_bed medicine_saliva_reducing special_care_needs low_income_or_literacy plaque_heavy_visible saliva_visually_inadequate gum_bleeds_easily appliance_orthodontic_or_removable',
      ) + one(n(g, 'snacks_between_meals_per_day') > 3);
    const protective = ticks(
      g,
      'water_fluoridated water_fluoridated_drunk toothpaste_f_once_daily toothpaste_f_twice_daily varnish_f_6m xylitol_caregiver',
    );
    // A high that rests on the weighing alone is not lifted to extreme here.
    return weigh(risk, protective, true, 'high');
  },

  scored_list_0_6: (g) =>
    scored([
      one(no(g, 'fluoride_any_exposure')),
      yes(g, 'bottle_bedtime_not_water') ? 10 : one(no(g, 'sugars_mainly_at_meals')),
      one(yes(g, 'low_income_or_literacy')),
      familyPoints(n(g, 'caregiver_decay_months_since')),
      one(no(g, 'dental_home')),
      10 * one(yes(g, 'special_care_needs')),
      10 * one(yes(g, 'cavitated_or_restored_24m')),
      one(yes(g, 'lesion_noncavitated_new_24m')),
      10 * one(yes(g, 'teeth_missing_due_to_decay')),
      one(yes(g, 'plaque_heavy_visible')),
      one(yes(g, 'appliance_orthodontic_or_removable')),
      10 * one(yes(g, 'saliva_visually_inadequate')),
    ]),

  scored_list_over_6(g, ageYears) {
    const lesions = n(g, 'lesions_or_restorations_count_36m');
    return scored([
      one(no(g, 'fluoride_any_exposure')),
      10 * one(no(g, 'sugars_mainly_at_meals')),
      ageYears <= 14 ? familyPoints(n(g, 'caregiver_decay_months_since')) : 0,
      one(no(g, 'dental_home')),
      yes(g, 'special_care_needs') ? (ageYears <= 14 ? 10 : 1) : 0,
      10 * one(yes(g, 'chemo_radiotherapy')),
      ticks(g, 'eating_disorder'),
      ticks(g, 'tobacco_smokeless'),
      ticks(g, 'medicine_saliva_reducing'),
      ticks(g, 'alcohol_or_drug_misuse'),
      lesions >= 3 ? 10 : one(lesions >= 1),
      10 * one(yes(g, 'teeth_missing_due_to_decay')),
      ticks(g, 'plaque_heavy_visible'),
      ticks(g, 'pits_fissures_deep'),
      ticks(g, 'restoration_interproximal'),
      ticks(g, 'roots_exposed'),
      ticks(g, 'restoration_defective'),
      ticks(g, 'appliance_orthodontic_or_removable'),
      10 * one(yes(g, 'dry_mouth_severe')),
    ]);
  },

  child_list_6plus(g) {
    const between = n(g, 'lesion_interproximal_count') >= 1;
    if (between) return 'high';
    if (ticks(g, 'lesion_white_spot_smooth_new saliva_flow_reduced_measured lesion_cavity_or_dentin_new restoration_for_decay_recent') > 0)
      return 'high';
    return fullest(
      ticks(g, 'low_income_or_literacy') + one(n(g, 'snacks_between_meals_per_day') > 3),
      ticks(g, 'recent_immigrant special_care_needs restoration_defective appliance_orthodontic_or_removable'),
      ticks(g, 'water_fluoridated toothpaste_f_once_daily topical_f_professional dental_home'),
    );
  },

  child_list_0_5(g) {
    const surfaces = yes(g, 'cavitated_or_restored_24m') || n(g, 'dmft_total') >= 2;
    if (n(g, 'snacks_between_meals_per_day') > 3 || surfaces || yes(g, 'decay_or_white_spot_evident_child')) return 'high';
    return fullest(
      ticks(g, 'caregiver_decay_12m low_income_or_literacy bottle_bedtime_not_water biofilm_bacteria_high'),
      ticks(g, 'recent_immigrant special_care_needs plaque_heavy_visible'),
      ticks(g, 'water_fluoridated toothpaste_f_once_daily topical_f_professional dental_home'),
    );
  },
};
