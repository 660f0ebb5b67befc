import { type Html, html } from '../shell/html.js';

/** How far to trust the answers, and how that was tested. */
export const exactness: Html = html`
<section id="exactness"><h2>How exact it is</h2>
<h3>The chart and the seed</h3>
<p>The days and percents are a handbook’s, one seed lot a crop, from the 1950s. Adding them up over changing temperature follows published work on onion and lettuce, but nobody has checked it against seedlings in beds. The answer gives two stands, never one: the laboratory’s, in which seed that heat or cold holds back only waits, and the one without that seed. The gap between them is the risk. What beds have given stands beside both.</p>
<h3>Where temperatures end</h3>
<p>The service lets the season drift on from the last month, and the ranges say how far such a drift has been off. Where three years or more of the place’s air are known, kept or sent, past years take its place: each goes on from today’s soil, the dates are the middle of them, and the ranges hold both what the years differ in and the doubt of the soil.</p>
<h3>Soil from air</h3>
<p>Soil worked out from air alone errs, in a day’s mean at 5 cm, by 1.5 °C where grass grows (root mean square, the middle one of 13 stations in the United States; one dry grassland errs by 4) and by 1.3 °C on bare ground (one plot in Germany, in one dry summer). Most of it is a constant of the place that a week of probe removes: then it is 1.0 °C.</p>
<p>Wet, shaded, covered and raised beds, pots and trays are worked out from physics and a few published figures, and are not checked against measurements: they get wider ranges, and the service gives what a remedy saves from half of it to half as much again. A probe deeper than some 10 cm below the seed shows no swing of day and night; then the service assumes a usual day’s, or takes the air’s.</p>
<h3>Past years</h3>
<p>Past years were tried at those 13 stations, each date worked out from the years before it. Half emergence of four crops missed by 1.4 days on average from air alone and by 1.1 with a week of probe; the same dates of past years, without any model, missed by 1.4. The ranges held 81 and 86 of 100 truths. Three days of coming weather, had they come as forecast, made it 0.95 days, a week 0.74; with the usual errors of forecasts a week makes it 0.94. Nobody counted a seedling for this: the truth is the chart’s own rate over soil as it was measured.</p>
<h3>When to sow</h3>
<p>Sowing windows count past years as alike, and leave out rain, pests and whether the ground can be worked. At the same 13 stations a date that promised 80 to 90 of 100 held in 86 of 100 of the years left out, in soil as it was measured; one of 97 or more in 99; the best date in 92.</p>
<p>Frost dates need ten years or more for 10, 50 and 90 % risk; fewer give 50 % alone.</p>
<h3>What counts teach</h3>
<p>This was tried on invented beds only, as no open record of counted sowings beside soil temperatures was found: beds whose seed is spread and lost unlike the model’s, with a tenth of the counts wrong. On these, three counts halved the error of half emergence, and the 80 % ranges of time and stand held the truth in about 80 of 100. With a count every four days the service called 96 of 100 dead sowings lost by twice the days to most, and one of 100 that were only slow. Onion is the exception: its beds take up to 2.3 times as long, so a dead row is known only after twice as long as beds need.</p>
<p>Advice on shade, watering and heat is general. Follow local watering rules, the label of treated seed and the makers of your tools, and ask your local adviser where it matters.</p>
</section>`;
