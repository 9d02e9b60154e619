import { useQueryClient } from '@tanstack/react-query';
import type { PracticeSettings } from '../../../core/visit/types.ts';
import { callApi } from '../../data/api.ts';
import { type RulesView, saveSettings } from '../../data/queries.ts';
import { useVersionedSave } from '../../data/useVersionedSave.ts';

/** Everything that goes by the settings of the practice is read anew. */
export function useReread() {
  const client = useQueryClient();
  return () => Promise.all([client.invalidateQueries({ queryKey: ['rules'] }), client.invalidateQueries({ queryKey: ['session'] })]);
}

/** How each form of this page saves the settings of the practice. */
export function useSettingsSave(rules: RulesView, close: (said?: string) => void) {
  const reread = useReread();
  return useVersionedSave<PracticeSettings>({
    version: rules.version,
    write: saveSettings,
    readAgain: async () => {
      const now = await callApi<RulesView>('GET', '/api/rules');
      return { value: now.settings, version: now.version };
    },
    onSaved: async () => {
      await reread();
      close('Saved.');
    },
  });
}
