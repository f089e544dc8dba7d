/** A key of the header that opens a menu. */
import type { ComponentProps, ReactElement, ReactNode } from 'react';
import { Button, Menu, MenuTrigger, Popover } from 'react-aria-components';

interface HeadMenuProps extends Omit<ComponentProps<typeof Menu>, 'className' | 'onAction'> {
  /** what the menu is called */
  readonly name: string;
  /** what stands on the key; a key with a picture only is called as the menu */
  readonly face: ReactNode;
  readonly busy?: boolean;
  readonly onOpen?: () => void;
  readonly onChoose: (id: string) => void;
}

export function HeadMenu({
  name,
  face,
  busy = false,
  onOpen,
  onChoose,
  ...menu
}: HeadMenuProps): ReactElement {
  return (
    <MenuTrigger
      onOpenChange={(open) => {
        if (open) onOpen?.();
      }}
    >
      <Button className="key" aria-label={busy ? `${name}, being made` : name} isDisabled={busy}>
        {face}
      </Button>
      <Popover className="sheet">
        <Menu
          {...menu}
          className="menu"
          aria-label={name}
          onAction={(key) => {
            onChoose(String(key));
          }}
        />
      </Popover>
    </MenuTrigger>
  );
}
