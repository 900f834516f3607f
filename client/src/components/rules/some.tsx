import { Button, Text } from '@mantine/core';
import { useState, type ReactNode } from 'react';

interface Props<T> {
  /** Changes whenever another list is shown, so that it begins at its first page again. */
  of: string;
  all: readonly T[];
  what: string;
  most?: number;
  children: (some: readonly T[]) => ReactNode;
}

/** The first of a long list, and more of it when asked for. */
export const Some = <T,>(props: Props<T>) => <Begun key={props.of} {...props} />;

function Begun<T>({ all, what, most = 40, children }: Props<T>) {
  const [shown, setShown] = useState(most);
  return (
    <>
      {children(all.slice(0, shown))}
      {all.length > shown && (
        <Button variant="default" mt="md" onClick={() => setShown(shown + most)}>
          Show {Math.min(most, all.length - shown)} more {what}
        </Button>
      )}
      {all.length > shown && (
        <Text size="sm" c="dimmed" mt={4}>
          {shown} of {all.length} shown
        </Text>
      )}
    </>
  );
}
