/** The window: header, views, and what lies over them. */
import { useCallback, useEffect, useState } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { Header } from './frame/Header.tsx';
import { LiveRegion } from './frame/LiveRegion.tsx';
import { ConflictSheet, KeysSheet, NoticeBar, RecoveredSheet } from './frame/Sheets.tsx';
import { PlanView } from './PlanView.tsx';
import { listenForKeys } from './state/commands.ts';
import { openPicked } from './state/documentStore.ts';
import type { Theme } from './state/settingsStore.ts';

/** A plan can be dropped anywhere on the window. */
function useDrop(): void {
  useEffect(() => {
    const over = (event: DragEvent): void => {
      if (event.dataTransfer?.types.includes('Files') === true) event.preventDefault();
    };
    const drop = (event: DragEvent): void => {
      const file = event.dataTransfer?.files[0];
      if (file === undefined) return;
      event.preventDefault();
      void openPicked(file);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('drop', drop);
    };
  }, []);
}

export function App({ theme }: { readonly theme: Theme }) {
  const [keysShown, setKeysShown] = useState(false);
  const [drawer, setDrawer] = useState(false);
  const closeDrawer = useCallback(() => {
    setDrawer(false);
  }, []);
  useDrop();
  useEffect(
    () =>
      listenForKeys(() => {
        setKeysShown(true);
      }),
    [],
  );
  return (
    <div className="window">
      <Header
        onKeys={() => {
          setKeysShown(true);
        }}
        onInputs={() => {
          setDrawer(true);
        }}
      />
      <Tabs className="tabs">
        <nav className="tab-place" aria-label="Views">
          <TabList className="tab-list" aria-label="Views">
            <Tab id="plan">Plan</Tab>
          </TabList>
        </nav>
        <main className="panels">
          <TabPanel id="plan" className="body">
            <PlanView theme={theme} drawer={drawer} onDrawerClose={closeDrawer} />
          </TabPanel>
        </main>
      </Tabs>
      <LiveRegion />
      <NoticeBar />
      <RecoveredSheet />
      <ConflictSheet />
      <KeysSheet
        open={keysShown}
        onClose={() => {
          setKeysShown(false);
        }}
      />
    </div>
  );
}
