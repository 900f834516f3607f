import { MantineProvider } from '@mantine/core';
import { Notifications } from '@mantine/notifications';
import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { queries } from './queries';
import { router } from './router';
import { theme, variables } from './theme';

export function App() {
  return (
    <MantineProvider theme={theme} cssVariablesResolver={variables} defaultColorScheme="auto">
      <QueryClientProvider client={queries}>
        <Notifications position="bottom-center" limit={3} zIndex={1000} />
        <RouterProvider router={router} />
      </QueryClientProvider>
    </MantineProvider>
  );
}
