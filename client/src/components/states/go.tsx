import { Anchor, type AnchorProps, Button, type ButtonProps } from '@mantine/core';
import { createLink } from '@tanstack/react-router';
import type { AnchorHTMLAttributes, Ref } from 'react';

type Props = AnchorProps &
  Omit<AnchorHTMLAttributes<HTMLAnchorElement>, keyof AnchorProps> & {
    ref?: Ref<HTMLAnchorElement>;
  };

const Plain = (props: Props) => <Anchor {...props} />;

/** A link within the program, in the studio's own dress. */
export const Go = createLink(Plain);

type ButtonLink = ButtonProps &
  Omit<AnchorHTMLAttributes<HTMLAnchorElement>, keyof ButtonProps> & {
    ref?: Ref<HTMLAnchorElement>;
  };

const PlainButton = (props: ButtonLink) => <Button component="a" {...props} />;

/** The same as a button, where going there is what the page is for. */
export const GoButton = createLink(PlainButton);
