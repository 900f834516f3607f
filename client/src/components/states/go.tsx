import { Anchor, type AnchorProps } from '@mantine/core';
import { createLink } from '@tanstack/react-router';
import type { AnchorHTMLAttributes, Ref } from 'react';

type Props = AnchorProps &
  Omit<AnchorHTMLAttributes<HTMLAnchorElement>, keyof AnchorProps> & {
    ref?: Ref<HTMLAnchorElement>;
  };

const Plain = (props: Props) => <Anchor {...props} />;

/** A link within the program, in the studio's own dress. */
export const Go = createLink(Plain);
