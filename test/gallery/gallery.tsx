/**
 * Every component of the window in its states, both themes beside each other. A developers' page: `npm run gallery`.
 */
import '../../renderer/styles/all.ts';
import './gallery.css';
import { StrictMode, useMemo } from 'react';
import { createRoot } from 'react-dom/client';
import { Component, PlainAndExtreme, State } from './frames.tsx';
import { Tonight } from './Tonight.tsx';
import { eveningStudy, forecastOf, plans } from './specimens.ts';
import { Answers } from '../../renderer/answers/Answers.tsx';
import { NamedCell } from '../../renderer/amounts/Cell.tsx';
import { DoughTable } from '../../renderer/amounts/DoughTable.tsx';
import { Shopping } from '../../renderer/amounts/Shopping.tsx';
import { Toppings } from '../../renderer/amounts/Toppings.tsx';
import { ReadersTable } from '../../renderer/adjust/Readers.tsx';
import { BakeCurves, PreheatCurves, type Compared } from '../../renderer/compare/Curves.tsx';
import { MeasuresTable } from '../../renderer/compare/MeasuresTable.tsx';
import { PlanList } from '../../renderer/compare/PlanList.tsx';
import { Progress } from '../../renderer/compare/Progress.tsx';
import { restingMoment, clockModel } from '../../renderer/clock/model.ts';
import { momentAt } from '../../renderer/clock/moment.ts';
import { Drawing } from '../../renderer/drawing/Drawing.tsx';
import { Field } from '../../renderer/inputs/Field.tsx';
import { Group } from '../../renderer/inputs/Group.tsx';
import { doughFields, kitchenFields, ovenFields, plateFields } from '../../renderer/inputs/fields.ts';
import { Notes } from '../../renderer/notes/Notes.tsx';
import { refuse } from '../../renderer/state/planStore.ts';
import { assumptionTexts } from '../../renderer/words/assumed.ts';
import { threeAnswers } from '../../renderer/words/answers.ts';
import { withDifferences } from '../../renderer/compare/differences.ts';
import { fromCelsius } from '../../physics/quantities/index.ts';
import type { Forecast } from '../../renderer/state/forecastStore.ts';
import type { Theme, Units } from '../../renderer/state/settingsStore.ts';
import type { ReadersRow } from '../../physics/evening/readersOven.ts';

const theme = new URLSearchParams(location.search).get('theme') as Theme | null;

function AnswersIn({ forecast, units }: { readonly forecast: Forecast; readonly units: 'metric' | 'us' }) {
  return (
    <Answers answers={threeAnswers(forecast, units)} assumed={assumptionTexts(forecast.answer.assumed)} />
  );
}

interface DrawingInProps {
  readonly forecast: Forecast;
  readonly shown: Theme;
  readonly units: Units;
}
function DrawingIn({ forecast, shown, units }: DrawingInProps) {
  const model = clockModel(forecast);
  const at = restingMoment(model);
  return (
    <div className="narrow">
      <Drawing
        evening={forecast.evening}
        moment={momentAt(forecast, at)}
        at={at}
        offset={model.offset}
        units={units}
        theme={shown}
      />
    </div>
  );
}

const rows: readonly ReadersRow[] = [
  {
    settingK: fromCelsius(200),
    reached: true,
    preheatMinutes: 31,
    plateTopK: fromCelsius(208),
    firstBakeMinutes: null,
    finishMinutes: null,
  },
  {
    settingK: fromCelsius(250),
    reached: true,
    preheatMinutes: 35,
    plateTopK: fromCelsius(261),
    firstBakeMinutes: 6.4,
    finishMinutes: 2.1,
  },
  {
    settingK: fromCelsius(300),
    reached: true,
    preheatMinutes: 38,
    plateTopK: fromCelsius(311),
    firstBakeMinutes: 3,
    finishMinutes: 0,
  },
  {
    settingK: fromCelsius(400),
    reached: false,
    preheatMinutes: null,
    plateTopK: null,
    firstBakeMinutes: null,
    finishMinutes: null,
  },
];

const studied = (done: number, stopped: boolean) => ({ outcomes: [], done, stopped });

function Gallery({ shown }: { readonly shown: Theme }) {
  const plain = useMemo(() => forecastOf(plans.plain, true), []);
  const computing = useMemo(() => forecastOf(plans.plain, false), []);
  const extreme = useMemo(() => forecastOf(plans.extreme, true), []);
  const evenings = useMemo((): readonly Compared[] => {
    const stone = withDifferences(plans.plain, [
      { path: 'plate.material', value: 'cordierite' },
      { path: 'plate.thickness', value: '15 mm' },
    ]);
    return [
      { index: 0, name: 'The plan', study: eveningStudy(plans.plain) },
      { index: 1, name: 'Cordierite, 15 mm thick', study: eveningStudy(stone) },
      {
        index: 4,
        name: 'Cast iron, 30 mm thick, highest of five, hotter than its dial 10 K, on parchment',
        study: eveningStudy(plans.extreme),
      },
    ];
  }, []);
  const one = evenings.slice(0, 1);
  return (
    <>
      <Component name="Three answers">
        <PlainAndExtreme
          plain={plain}
          extreme={extreme}
          draw={(forecast, units) => <AnswersIn forecast={forecast} units={units} />}
        />
        <State name="computing: the range follows">
          <AnswersIn forecast={computing} units="metric" />
        </State>
      </Component>
      <Component name="Drawing">
        <PlainAndExtreme
          plain={plain}
          extreme={extreme}
          draw={(forecast, units) => <DrawingIn forecast={forecast} shown={shown} units={units} />}
        />
      </Component>
      <Component name="Fields">
        <State name="typical: quantity, choice, number, flag">
          <div className="narrow">
            {[ovenFields.first[1]!, plateFields.first[0]!, doughFields.first[1]!, ovenFields.more[2]!].map(
              (spec) => (
                <Field key={spec.path} spec={spec} />
              ),
            )}
          </div>
        </State>
        <State name="wrong input">
          <div className="narrow">
            <Field spec={plateFields.first[1]!} />
          </div>
        </State>
        <State name="empty">
          <div className="narrow">
            <Field spec={kitchenFields.at(-1)!} />
          </div>
        </State>
      </Component>
      <Component name="Group of fields">
        <State name="folded">
          <div className="narrow">
            <Group name="Plate" summary="Carbon steel 8 mm, second from the bottom of five" wrong={false}>
              <p>Fields</p>
            </Group>
          </div>
        </State>
        <State name="folded, an entry not taken">
          <div className="narrow">
            <Group name="Plate" summary="" wrong>
              <p>Fields</p>
            </Group>
          </div>
        </State>
        <State name="long summary">
          <div className="narrow">
            <Group
              name="Dough"
              summary="62 % water, 5 % milk, 3 % beer, 2 % whey, 1 % honey, instant yeast 0.2 %"
              wrong={false}
              startsOpen
            >
              <p>Open</p>
            </Group>
          </div>
        </State>
      </Component>
      <Component name="Cell">
        <State name="held, following, with a note">
          <div className="narrow">
            <NamedCell label="One ball" held shown="250 g" onTake={() => undefined} />
            <NamedCell label="All the dough" held={false} shown="1000 g" onTake={() => undefined} />
            <NamedCell
              label="Cans"
              note="400 g of sauce in each; a number typed in uses them up"
              shown="1"
              onTake={() => undefined}
            />
          </div>
        </State>
        <State name="wrong input: type anything and press Enter">
          <div className="narrow">
            <NamedCell
              label="One ball"
              held
              shown="250 g"
              onTake={(text) => `Found ${JSON.stringify(text)}; allowed a mass, such as 250 g.`}
            />
          </div>
        </State>
      </Component>
      <Component name="Dough, sauce, cheese, list">
        <PlainAndExtreme
          plain={plain}
          extreme={extreme}
          draw={({ evening }, units) => <DoughTable evening={evening} units={units} />}
        />
        <State name="sauce and cheese">
          <Toppings evening={plain.evening} units="metric" />
        </State>
        <State name="list: typical, empty">
          <Shopping items={plain.answer.shopping} units="metric" />
          <Shopping items={[]} units="metric" />
        </State>
      </Component>
      <Component name="Charts of lines">
        <State name="three, one with a long name">
          <PreheatCurves evenings={evenings} units="metric" theme={shown} />
        </State>
        <State name="one">
          <BakeCurves evenings={one} units="us" theme={shown} />
        </State>
        <State name="computing: nothing yet">
          <PreheatCurves evenings={[]} units="metric" theme={shown} />
        </State>
      </Component>
      <Component name="In figures">
        <State name="three, one with a long name">
          <MeasuresTable evenings={evenings} units="metric" />
        </State>
        <State name="one: nothing is best">
          <MeasuresTable evenings={one} units="us" />
        </State>
      </Component>
      <Component name="Side by side">
        <State name="typical, and one that cannot be computed">
          <div className="narrow">
            <PlanList
              evening={plain.evening}
              units="metric"
              variants={[
                { id: 1, differences: [{ path: 'plate.thickness', value: '12 mm' }] },
                { id: 2, differences: [{ path: 'plate.width', value: '70 cm' }] },
                { id: 3, differences: [] },
              ]}
              outcomes={[
                undefined,
                undefined,
                {
                  ok: false,
                  problems: [
                    {
                      path: 'plate.width',
                      found: '"70 cm"',
                      allowed: 'less than the width of the cavity, 46 cm',
                    },
                  ],
                },
              ]}
            />
          </div>
        </State>
      </Component>
      <Component name="Progress">
        <State name="computing, stopped">
          <Progress group="map" studied={studied(12, false)} total={30} what="evenings of the map" />
          <Progress group="map" studied={studied(12, true)} total={30} what="evenings of the map" />
        </State>
      </Component>
      <Component name="For the recipe">
        <State name="not done, typical, not reached">
          <ReadersTable rows={rows} evening={plain.evening} units="metric" />
        </State>
      </Component>
      <Component name="Notes">
        <PlainAndExtreme
          plain={plain}
          extreme={extreme}
          draw={(forecast, units) => <Notes forecast={forecast} units={units} theme={shown} />}
        />
      </Component>
      <Tonight forecast={plain} extreme={extreme} />
    </>
  );
}

/** Both themes, each in a frame of its own: a page has one theme. */
function Both() {
  return (
    <div className="both">
      {(['flour', 'iron'] as const).map((name) => (
        <iframe key={name} title={name} src={`?theme=${name}`} />
      ))}
    </div>
  );
}

const place = document.getElementById('gallery');
if (place === null) throw new Error('index.html: found no element "gallery"; allowed exactly one');
if (theme !== null) {
  document.documentElement.dataset['theme'] = theme;
  refuse('plate.thickness', '9.5 s', 'Found "9.5 s"; allowed a length, such as 9.5 mm or 3/8 in.');
}
createRoot(place).render(<StrictMode>{theme === null ? <Both /> : <Gallery shown={theme} />}</StrictMode>);
