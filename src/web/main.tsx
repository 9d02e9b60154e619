import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '@fontsource/vazirmatn/arabic-400.css';
import '@fontsource/vazirmatn/arabic-600.css';
import './styles/base.css';
import './styles/shell.css';
import './styles/parts.css';
import './styles/visit.css';
import './styles/charts.css';
import './styles/screens.css';
import './styles/today.css';
import './styles/leaflet.css';
import './styles/forms.css';
import './styles/swab.css';
import './styles/signing.css';
import './styles/checks.css';
import './styles/hiding.css';
import './styles/studies.css';
import './styles/acidDay.css';
import './styles/dayRow.css';
import './styles/fluids.css';
import './styles/print.css';
import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { createQueryClient } from './data/queries.ts';
import { createPageCorrections, createServerQueue, KeptCorrectionsContext, SaveQueueContext } from './data/saving.ts';
import { applyTheme } from './preferences.ts';

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element with the id "root"');
applyTheme();
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={createQueryClient()}>
      <SaveQueueContext value={createServerQueue()}>
        <KeptCorrectionsContext value={createPageCorrections()}>
          <App />
        </KeptCorrectionsContext>
      </SaveQueueContext>
    </QueryClientProvider>
  </StrictMode>,
);
