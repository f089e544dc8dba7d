/** A sheet over the window that the cook asked for: heading, what it holds, and the key that closes it. */
import type { ReactNode } from 'react';
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { changeSettings, useSettings } from '../state/settingsStore.ts';
import { showSheet, useSheet, type SheetId } from '../state/sheetStore.ts';

interface SheetProps {
  readonly id: SheetId;
  readonly heading: string;
  readonly wide?: boolean;
  readonly children: ReactNode;
}

export function Sheet({ id, heading, wide = false, children }: SheetProps) {
  const open = useSheet(({ shown }) => shown === id);
  const close = (): void => {
    showSheet(undefined);
  };
  return (
    <ModalOverlay
      className="veil"
      isOpen={open}
      isDismissable
      onOpenChange={(next) => {
        if (!next) close();
      }}
    >
      <Modal className="sheet">
        <Dialog className={wide ? 'sheet-body wide-sheet' : 'sheet-body'}>
          <Heading slot="title">{heading}</Heading>
          {children}
          <div className="actions">
            <Button className="key main" onPress={close}>
              Close
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** WCAG 2.1.4 asks that keys of one letter can be switched off. */
export function LetterKeysFlag() {
  const letterKeys = useSettings((state) => state.letterKeys);
  return (
    <label className="flag">
      <input
        type="checkbox"
        checked={letterKeys}
        onChange={(event) => {
          changeSettings({ letterKeys: event.currentTarget.checked });
        }}
      />
      Single letters work as keys
    </label>
  );
}
