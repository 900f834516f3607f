import '@fontsource/atkinson-hyperlegible-next/latin-400.css';
import '@fontsource/atkinson-hyperlegible-next/latin-600.css';
import '@fontsource/atkinson-hyperlegible-next/latin-700.css';
import '@fontsource/atkinson-hyperlegible-next/latin-ext-400.css';
import '@fontsource/atkinson-hyperlegible-next/latin-ext-700.css';
import '@mantine/core/styles.css';
import '@mantine/notifications/styles.css';
import './app/global.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/app';

const root = document.getElementById('root');
if (root === null) throw new Error('The page has no root element.');
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
