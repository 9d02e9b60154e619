import type { NoiseTable } from '../core/reading/noiseTable.ts';

/**
 * What is taken of the noise of readings before a practice has measured its own, and how much that counts beside its studies.
 * The weights are our proposal. Published spreads of single swabs (9 to 50 %) differ between meters as much as estimates of 2 to 4
 * degrees of freedom would, so an assumed figure gets 4; what is not published at all gets 2.
 */
export const readingNoise: NoiseTable = {
  parts: {
    repeatability: {
      part: 'repeatability',
      name: 'repeatability',
      between: 'between single swabs',
      cv: null,
      degreesOfFreedom: 4,
      source: {
        key: 'vogel2014',
        status: 'read',
        note: 'abstract: 12 to 19 % in the middle of a scale, about 60 % near its floor; other meters up to 50 %; the weight is our proposal',
      },
    },
    withinPerson: {
      part: 'withinPerson',
      name: 'day-to-day variation',
      between: 'between days of one person',
      cv: null,
      degreesOfFreedom: 4,
      source: {
        key: 'bentley1988',
        status: 'proposal',
        note: 'culture of saliva shows that it is large; no figure for a swab of plaque was found',
      },
    },
    operator: {
      part: 'operator',
      name: 'hands',
      between: 'between hands',
      cv: 0.15,
      degreesOfFreedom: 2,
      source: { key: 'project', status: 'proposal', note: 'no peer-reviewed spread between operators of an oral swab was found' },
    },
    lot: {
      part: 'lot',
      name: 'swab lots',
      between: 'between swab lots',
      cv: 0.1,
      degreesOfFreedom: 2,
      source: {
        key: 'vogel2014',
        status: 'derived',
        note: 'from 16 % between runs and 12 % within one; that runs differ as lots do is our proposal',
      },
    },
    meter: {
      part: 'meter',
      name: 'meters of one model',
      between: 'between meters of one model',
      cv: 0.1,
      degreesOfFreedom: 2,
      source: { key: 'project', status: 'proposal', note: 'no spread between meters of one model was found' },
    },
  },
  typed: {
    degreesOfFreedom: 9,
    source: { key: 'project', status: 'proposal', note: 'as if from ten swabs' },
  },
  looks: {
    visits: 6,
    chance: 0.05,
    source: { key: 'project', status: 'proposal', note: 'about two years at four months; 1 person in 20 as for one comparison' },
  },
};
