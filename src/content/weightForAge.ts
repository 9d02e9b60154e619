import type { WeightRow } from '../core/regimen/tables.ts';

/**
 * Weight for age, LMS. 6, 12 and 18 months: WHO 2006; each birthday from 2 to 20: CDC 2000 (public domain), middle of the two half-month
 * rows beside it. Only these rows: between them the younger one is taken, because an assumed weight must err on the light side.
 */
export const weightForAge: readonly WeightRow[] = [
  { ageMonths: 6, boys: { l: 0.1256, mKg: 7.9389, s: 0.10957 }, girls: { l: -0.0759, mKg: 7.3016, s: 0.12204 } },
  { ageMonths: 12, boys: { l: 0.0645, mKg: 9.646, s: 0.10925 }, girls: { l: -0.2022, mKg: 8.9462, s: 0.12267 } },
  { ageMonths: 18, boys: { l: 0.021, mKg: 10.9393, s: 0.1112 }, girls: { l: -0.2637, mKg: 10.2324, s: 0.12309 } },
  { ageMonths: 24, boys: { l: -0.206152, mKg: 12.6708, s: 0.108126 }, girls: { l: -0.73534, mKg: 12.055, s: 0.107399 } },
  { ageMonths: 36, boys: { l: -0.603195, mKg: 14.3302, s: 0.111625 }, girls: { l: -1.016556, mKg: 13.8652, s: 0.118939 } },
  { ageMonths: 48, boys: { l: -0.908375, mKg: 16.2311, s: 0.119562 }, girls: { l: -1.171494, mKg: 15.7932, s: 0.131345 } },
  { ageMonths: 60, boys: { l: -0.998049, mKg: 18.3925, s: 0.129467 }, girls: { l: -1.284118, mKg: 17.9305, s: 0.14084 } },
  { ageMonths: 72, boys: { l: -1.082396, mKg: 20.6806, s: 0.138782 }, girls: { l: -1.32701, mKg: 20.2365, s: 0.149221 } },
  { ageMonths: 84, boys: { l: -1.230031, mKg: 23.0651, s: 0.147002 }, girls: { l: -1.269897, mKg: 22.7568, s: 0.159223 } },
  { ageMonths: 96, boys: { l: -1.349113, mKg: 25.6393, s: 0.155581 }, girls: { l: -1.134218, mKg: 25.6279, s: 0.171598 } },
  { ageMonths: 108, boys: { l: -1.34258, mKg: 28.551, s: 0.166172 }, girls: { l: -0.976886, mKg: 28.9914, s: 0.184681 } },
  { ageMonths: 120, boys: { l: -1.213752, mKg: 31.9356, s: 0.178416 }, girls: { l: -0.850952, mKg: 32.8913, s: 0.195577 } },
  { ageMonths: 132, boys: { l: -1.027322, mKg: 35.8948, s: 0.189633 }, girls: { l: -0.788405, mKg: 37.206, s: 0.201828 } },
  { ageMonths: 144, boys: { l: -0.843939, mKg: 40.4714, s: 0.196437 }, girls: { l: -0.80512, mKg: 41.6457, s: 0.202392 } },
  { ageMonths: 156, boys: { l: -0.702762, mKg: 45.5915, s: 0.196785 }, girls: { l: -0.909296, mKg: 45.8207, s: 0.197655 } },
  { ageMonths: 168, boys: { l: -0.632898, mKg: 51.0048, s: 0.191138 }, girls: { l: -1.101883, mKg: 49.3603, s: 0.188977 } },
  { ageMonths: 180, boys: { l: -0.66208, mKg: 56.2811, s: 0.182069 }, girls: { l: -1.364688, mKg: 52.0425, s: 0.178393 } },
  { ageMonths: 192, boys: { l: -0.794905, mKg: 60.9212, s: 0.17281 }, girls: { l: -1.640738, mKg: 53.8834, s: 0.168485 } },
  { ageMonths: 204, boys: { l: -0.966876, mKg: 64.57, s: 0.165862 }, girls: { l: -1.833229, mKg: 55.1369, s: 0.161927 } },
  { ageMonths: 216, boys: { l: -1.064878, mKg: 67.1982, s: 0.16203 }, girls: { l: -1.854118, mKg: 56.1853, s: 0.160333 } },
  { ageMonths: 228, boys: { l: -1.027436, mKg: 69.1232, s: 0.160186 }, girls: { l: -1.701839, mKg: 57.3043, s: 0.162979 } },
  { ageMonths: 240, boys: { l: -0.916488, mKg: 70.5976, s: 0.161477 }, girls: { l: -1.513362, mKg: 58.219, s: 0.166645 } },
];
