import { SegmentedControl, Text, useMantineColorScheme } from '@mantine/core';

export function ColourScheme() {
  const { colorScheme, setColorScheme } = useMantineColorScheme();
  return (
    <div role="group" aria-label="Light or dark">
      <Text size="sm" mb={4} aria-hidden>
        Light or dark
      </Text>
      <SegmentedControl
        fullWidth
        size="sm"
        value={colorScheme}
        onChange={(scheme) => setColorScheme(scheme)}
        data={[
          { value: 'light', label: 'Light' },
          { value: 'dark', label: 'Dark' },
          { value: 'auto', label: 'As device' },
        ]}
      />
    </div>
  );
}
