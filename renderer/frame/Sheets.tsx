/** What lies over the window unasked: a notice, work kept aside from last time, a file that another program changed. */
import { X } from 'lucide-react';
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { dropConflict, savePlan, savePlanAs, say, useDocument } from '../state/documentStore.ts';
import { dropRecovered, takeRecovered } from '../state/keptWork.ts';
import { pastClockText, dayText, epochOf, localOffset } from '../words/clock.ts';

export function NoticeBar() {
  const notice = useDocument((state) => state.notice);
  if (notice === undefined) return null;
  const { text, lines, action } = notice;
  return (
    <div className="notice" role="alert">
      <div>
        <p>{text}</p>
        {lines !== undefined && (
          <ul className="small">
            {lines.slice(0, 6).map((line) => (
              <li key={line}>{line}</li>
            ))}
            {lines.length > 6 && <li>and {lines.length - 6} more</li>}
          </ul>
        )}
      </div>
      {action !== undefined && (
        <button type="button" className="key" onClick={action.run}>
          {action.name}
        </button>
      )}
      <button
        type="button"
        className="key"
        aria-label="Close the notice"
        onClick={() => {
          say(undefined);
        }}
      >
        <X aria-hidden="true" />
      </button>
    </div>
  );
}

export function RecoveredSheet() {
  const recovered = useDocument((state) => state.recovered);
  if (recovered === undefined) return null;
  const { kept, keptAt } = recovered;
  const at = epochOf(keptAt);
  const offset = localOffset(at);
  const wrong = Object.keys(kept.drafts).length;
  return (
    <ModalOverlay className="veil" isOpen isKeyboardDismissDisabled>
      <Modal className="sheet">
        <Dialog className="sheet-body" role="alertdialog">
          <Heading slot="title">Changes of last time were not saved</Heading>
          <p>
            {kept.name ?? kept.file.title ?? 'A plan'}, kept aside on {dayText(at, offset)} at{' '}
            {pastClockText(at, offset)}
            {wrong > 0 && `, with ${wrong === 1 ? 'an entry' : 'entries'} not taken yet`}.
            {kept.file.tonight?.log?.some(({ what }) => what === 'begun') === true &&
              ' An evening was begun in it: its alarms ring when you go on.'}
          </p>
          <div className="actions">
            <Button className="key main" autoFocus onPress={() => void takeRecovered()}>
              Go on with them
            </Button>
            <Button className="key framed" onPress={dropRecovered}>
              Throw them away
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** The file is another than was opened here: nothing is replaced before the cook says so. */
export function ConflictSheet() {
  const conflict = useDocument((state) => state.conflict);
  const name = useDocument((state) => state.document?.name);
  if (conflict === undefined) return null;
  return (
    <ModalOverlay className="veil" isOpen isKeyboardDismissDisabled={false} onOpenChange={dropConflict}>
      <Modal className="sheet">
        <Dialog className="sheet-body" role="alertdialog">
          <Heading slot="title">Another program changed “{name}”</Heading>
          <p>
            It is no longer what was opened here. Replaced, that version is kept beside it with the ending
            .bak.
          </p>
          <div className="actions">
            <Button className="key main" autoFocus onPress={() => void savePlanAs()}>
              Save as another file
            </Button>
            <Button className="key framed" onPress={() => void savePlan(true)}>
              Replace it
            </Button>
            <Button className="key framed" onPress={dropConflict}>
              Cancel
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
