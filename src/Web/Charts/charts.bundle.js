// What pages use of Apache ECharts (Apache licence 2.0), bundled into wwwroot/lib/charts.js when the program is built.
import { init, use } from "echarts/core";
import { LineChart } from "echarts/charts";
import { GridComponent, MarkAreaComponent, MarkLineComponent, MarkPointComponent } from "echarts/components";
import { LabelLayout } from "echarts/features";
import { CanvasRenderer, SVGRenderer } from "echarts/renderers";

use([LineChart, GridComponent, MarkAreaComponent, MarkLineComponent, MarkPointComponent, LabelLayout, CanvasRenderer, SVGRenderer]);

export { init };
