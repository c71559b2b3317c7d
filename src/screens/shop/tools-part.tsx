import type { MeasuringTool } from '../../engine/reading/measuring-tool.ts';
import { show } from '../../engine/length/show.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { measuringTools, putBackTool, removedTools } from '../../store/kept/tools.ts';
import { hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { Row } from '../common/row.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { Trouble, useTold } from '../common/told.tsx';
import './shop-screen.css';

async function toolsOf(store: Store) {
  return { tools: await measuringTools(store), removed: await removedTools(store) };
}

/** The measuring tools, and behind them the usual ones that were removed: each is put back by one press. */
export function ToolsPart() {
  const store = useStore();
  const unit = useShownUnit();
  // Read in one: a tool that comes back never stands in both lists.
  const { tools, removed } = useLive('shop-tools', ['tools'], toolsOf) ?? { tools: [], removed: [] };
  const { trouble, told } = useTold();
  const putBack = (tool: MeasuringTool) =>
    told(putBackTool(store, tool), () => announce(`${tool.name} is back.`));
  return (
    <section class="shop-part">
      <h2>Measuring tools</h2>
      <ul>
        {tools.map((tool) => (
          <li key={tool.id}>
            <Row
              href={hrefOf({ at: 'tool', toolId: tool.id })}
              title={tool.name}
              detail={tool.source}
              figure={`±${show(tool.mpe, unit)}`}
            />
          </li>
        ))}
      </ul>
      {removed.length > 0 && (
        <>
          <p>Removed; a press puts one back as it was.</p>
          <div class="shop-part-keys">
            {removed.map((tool) => (
              <Button key={tool.id} onPress={() => putBack(tool)}>
                Put back {tool.name}
              </Button>
            ))}
          </div>
        </>
      )}
      <Trouble>{trouble}</Trouble>
    </section>
  );
}
