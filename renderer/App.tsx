/** The window: header, views, and what lies over them. */
import { useCallback, useEffect, useRef, useState } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { Header } from './frame/Header.tsx';
import { LiveRegion } from './frame/LiveRegion.tsx';
import { AboutSheet } from './frame/AboutSheet.tsx';
import { KeysSheet } from './frame/KeysSheet.tsx';
import { SettingsSheet } from './frame/SettingsSheet.tsx';
import { ConflictSheet, NoticeBar, RecoveredSheet } from './frame/Sheets.tsx';
import { listenForKeys } from './state/commands.ts';
import type { Theme } from './state/settingsStore.ts';
import { isViewId, showView, useView } from './state/viewStore.ts';
import { openPicked, useDocument } from './state/documentStore.ts';
import { useForecast } from './state/forecastStore.ts';
import { AlarmNotice } from './tonight/AlarmNotice.tsx';
import { views } from './views.tsx';

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

/**
 * What had the focus goes with its view: the tab of the one that opens then has it, not the top of the page, nor the tab
 * of the one that closes.
 */
function useFocusKept(view: string): void {
  const before = useRef(view);
  useEffect(() => {
    if (before.current === view) return;
    before.current = view;
    const { activeElement } = document;
    if (activeElement !== document.body && activeElement?.getAttribute('role') !== 'tab') return;
    document.querySelector<HTMLElement>('.tab-list [aria-selected="true"]')?.focus();
  }, [view]);
}

export function App({ theme }: { readonly theme: Theme }) {
  const [drawer, setDrawer] = useState(false);
  const closeDrawer = useCallback(() => {
    setDrawer(false);
  }, []);
  const view = useView((state) => state.view);
  const work = useForecast((state) => (state.forecast === undefined ? 'point' : state.busy));
  const opened = useDocument((state) => state.opened);
  useDrop();
  useFocusKept(view);
  useEffect(() => listenForKeys(views.map(({ id }) => id)), []);
  return (
    <div className="window" data-computing={work ?? 'nothing'} data-opened={opened}>
      <Header
        onInputs={() => {
          showView('plan');
          setDrawer(true);
        }}
      />
      <Tabs
        className="tabs"
        selectedKey={view}
        onSelectionChange={(key) => {
          const id = String(key);
          if (isViewId(id)) showView(id);
        }}
      >
        <nav className="tab-place" aria-label="Views">
          <TabList className="tab-list" aria-label="Views">
            {views.map(({ id, name }) => (
              <Tab key={id} id={id}>
                <span data-name={name}>{name}</span>
              </Tab>
            ))}
          </TabList>
        </nav>
        <main className="panels">
          {views.map(({ id, panel, draw }) => (
            <TabPanel key={id} id={id} className={panel}>
              {draw({ theme, drawer, onDrawerClose: closeDrawer })}
            </TabPanel>
          ))}
        </main>
      </Tabs>
      <LiveRegion />
      <NoticeBar />
      <AlarmNotice />
      <RecoveredSheet />
      <ConflictSheet />
      <SettingsSheet />
      <KeysSheet />
      <AboutSheet />
    </div>
  );
}
