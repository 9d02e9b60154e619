import type { PathwayView } from './comparePathways.ts';
import { PATHWAY_TOPICS, type PathwayTopic } from './pathway.ts';

const TOPIC_NAMES: Readonly<Record<PathwayTopic, string>> = {
  'home-fluoride': 'Fluoride at home',
  'professional-fluoride': 'Fluoride by the professional',
  antimicrobial: 'Antimicrobial',
  sweetener: 'Sweetener',
  'acid-control': 'Acid control',
  'calcium-phosphate': 'Calcium phosphate',
  sealing: 'Sealing',
  recall: 'Next visit',
  bitewings: 'Bitewings',
};

/** The words of a topic as it stands at the head of a line. */
export const pathwayTopicName = (topic: PathwayTopic): string => TOPIC_NAMES[topic];

/**
 * One sentence for each topic on which pathways differ: each thing that is said with those who say it, and who does not speak of it.
 * "Fluoride at home: paste twice a day (A, B); paste of 1,450 ppm (C); not named (D)." A topic that all name in the same words is left out.
 */
export function sayDifferences(pathways: readonly PathwayView[]): readonly string[] {
  return PATHWAY_TOPICS.flatMap((topic) => {
    const bySaying = new Map<string, string[]>();
    const notNaming: string[] = [];
    for (const { name, gives } of pathways) {
      const says = gives.find((g) => g.topic === topic)?.says;
      if (says === undefined) notNaming.push(name);
      else bySaying.set(says, [...(bySaying.get(says) ?? []), name]);
    }
    const isAlike = bySaying.size === 0 || (bySaying.size === 1 && notNaming.length === 0);
    if (isAlike) return [];
    const parts = [...bySaying].map(([says, names]) => `${says} (${names.join('; ')})`);
    const silent = notNaming.length > 0 ? [`not named (${notNaming.join('; ')})`] : [];
    return [`${pathwayTopicName(topic)}: ${[...parts, ...silent].join(', or ')}.`];
  });
}
