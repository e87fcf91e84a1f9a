import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './style/tokens.css';
import './style/base.css';
import './style/print.css';
import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { registerServiceWorker } from './offline/keep-day.ts';
import { router } from './router.tsx';
import { queries } from './server/queries.ts';

const place = document.getElementById('root');
if (place === null) throw new Error('the page has no place for the screens');

registerServiceWorker();
createRoot(place).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <RouterProvider router={router} />
    </QueryClientProvider>
  </StrictMode>,
);
