import { useQuery } from '@tanstack/react-query';
import type { LocalProtocolView } from '../../api/localProtocols.ts';
import type { LocalProtocol } from '../../core/regimen/local/localProtocol.ts';
import { callApi } from './api.ts';

export function useLocalProtocols() {
  return useQuery({
    queryKey: ['local-protocols'],
    queryFn: async () => (await callApi<{ protocols: readonly LocalProtocolView[] }>('GET', '/api/local-protocols')).protocols,
  });
}

export const writeLocalProtocol = (protocol: Omit<LocalProtocol, 'id' | 'author' | 'retired'>) =>
  callApi<{ id: string }>('POST', '/api/local-protocols', protocol);

export const retireLocalProtocol = ({ protocol: { id }, version }: LocalProtocolView, reason: string) =>
  callApi<{ version: number }>('POST', `/api/local-protocols/${encodeURIComponent(id)}/retirement`, { reason, version });
