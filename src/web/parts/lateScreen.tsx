import { useQuery } from '@tanstack/react-query';
import type { FunctionComponent } from 'react';
import { LoadState } from './LoadState.tsx';

export type LateScreen<Props> = FunctionComponent<Props> & {
  /** Fetches the code before it is asked for. What fails then is fetched again when the screen opens. */
  warm(): Promise<void>;
};

/** A screen whose code is not part of the first picture. Once it is there, it opens at once and without the server. */
export function lateScreen<Props extends object>(name: string, load: () => Promise<FunctionComponent<Props>>): LateScreen<Props> {
  let ready: FunctionComponent<Props> | undefined;
  const fetchCode = async () => {
    ready = await load();
    return name;
  };
  // biome-ignore lint/correctness/noComponentHookFactories: called once for each screen, when the module is read
  const Late = (props: Props) => {
    const code = useQuery({
      queryKey: ['code', name],
      queryFn: fetchCode,
      enabled: ready === undefined,
      staleTime: Number.POSITIVE_INFINITY,
      // Nothing is read of the answer but that it came, and by itself only what is read is drawn anew.
      notifyOnChangeProps: 'all',
    });
    const Screen = ready;
    return Screen ? <Screen {...props} /> : <LoadState query={code} what="the page" />;
  };
  const warm = async () => {
    await fetchCode().catch(() => undefined);
  };
  return Object.assign(Late, { warm });
}
