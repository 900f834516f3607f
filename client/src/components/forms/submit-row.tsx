import { Button, Group } from '@mantine/core';

interface Props {
  label: string;
  busy: boolean;
  onCancel?: () => void;
  disabled?: boolean;
}

export const SubmitRow = ({ label, busy, onCancel, disabled = false }: Props) => (
  <Group mt="lg" gap="sm">
    <Button type="submit" loading={busy} disabled={disabled}>
      {label}
    </Button>
    {onCancel && (
      <Button variant="default" onClick={onCancel} disabled={busy}>
        Leave it
      </Button>
    )}
  </Group>
);
