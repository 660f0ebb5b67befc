import type { Catalogue } from './facts.js';

/** German. */
export const de = {
  curve:
    'Tage und Aufgang folgen daraus, wie Samen bei gleichbleibender Temperatur keimen ({crop}; {source}), Stunde für Stunde zusammengezählt. Diese Summe ist nicht an Sämlingen im Beet geprüft.',
  'moist-seedbed':
    '{wettedOn, select, none {Angenommen ist, dass die Saat vom Säen bis zum Aufgang feucht liegt. Trocknet sie aus, wartet sie, und alle Daten verschieben sich.} other {Angenommen ist, dass die Saat bis zum {wettedOn} mittags trocken liegt und von da an feucht.}}',
  'count-day':
    'Es zählt nur, was {countDays, plural, one {# Tag} other {# Tage}} nach der Saat aufgegangen ist{isOwn, select, yes {} other {; mit countDays zählt ein anderer Tag}}.',
  ranges:
    'Die Spannen lassen offen, was das Wetter nach dem letzten Wert bringt und wie gut der Boden bekannt ist. Saatgut, Saatbett, Feuchte und die ganzen Tage der Tabelle kommen hinzu.',
  'beds-against-laboratory':
    'Im Beet geht weniger auf, und später, als im Labor: Neben den Zahlen des Labors {stand, select, own {gilt Ihr eigener Anteil am Aufgang} taught {gilt der Anteil am Aufgang, den Ihre Zählungen ergeben} other {gilt der Anteil am Aufgang}} und {time, select, own {Ihr eigener Zeitfaktor} taught {die Zeit, die Ihre Zählungen ergeben} other {die Zeitspanne der Kultur}}.',
  depth: 'Es wurde keine Tiefe angegeben; angenommen sind {depthCm}.',
  lot: '{about, select, seeds {Wie viel des Saatguts keimt, ist nicht angegeben: Angenommen ist es so gut wie das beste der Tabelle, {chartPercent} von hundert.} other {Es wurde keine Keimprobe angegeben; angenommen ist Saatgut so gut wie das der Tabelle. Bei alten Päckchen zehn Samen auf feuchtem Papier prüfen.}}',
  normals:
    '{about, select, plan {Vergangene Jahre sind nicht bekannt: Der Plan gilt für ein übliches Jahr, aus den Mittelwerten des Ortes. Wie oft er fehlschlägt, lässt sich nicht sagen.} other {Nach dem letzten Wert vom {lastDate} geht der Boden, von seinem heutigen Stand aus, so weiter, wie ihn die Mittelwerte des Ortes in einem üblichen Jahr ergeben: Vergangene Jahre sind nicht bekannt. Die Spannen sind deshalb weit.}}',
  'past-years':
    '{about, select, plan {Der Plan folgt daraus, was jede Saat in {years, plural, one {# vergangenen Jahr} other {# vergangenen Jahren}} ergeben hätte; eine Woche gilt als erreicht, wo sie es in der Hälfte von ihnen oder öfter war.} other {Nach dem letzten Wert vom {lastDate} geht der Boden, von seinem heutigen Stand aus, so weiter wie in {years, plural, one {# vergangenen Jahr} other {jedem von # vergangenen Jahren}}. Die Daten sind deren Mitte; die Tage zeigen ihr Mittel, in dem einzelne heiße und kalte Tage geglättet sind.}}',
  'repeat-last-week':
    'Nach dem letzten Wert vom {lastDate} ist angenommen, dass sich die letzte Woche immer aufs Neue wiederholt.',
  'seasonal-drift':
    'Nach dem letzten Wert vom {lastDate} folgt der Boden der Jahreszeit, ausgehend vom Stand der letzten {levelDays, plural, one {# Tag} other {# Tage}} oder weniger, mit dem Tagesgang der letzten Woche.',
  daylight: 'Es wurde keine Breite angegeben; angenommen sind Tage von zwölf Stunden, am wärmsten kurz nach Mittag.',
  'zone-from-stamps':
    'Es wurde keine Zeitzone angegeben; Tage zählen nach {timeZone}, der Abweichung des ersten Zeitstempels.',
  'bed-as-measured':
    'Die Temperaturen gelten als dort gemessen, wo die Saat liegt: Angaben zu Art, Abdeckung, Schatten und Wasser des Beetes ändern daran nichts.',
  'own-rows':
    'Jenseits Ihrer kältesten und wärmsten Zeile fällt die Kurve innerhalb von {marginK} auf null, oder bei der Basistemperatur, die sich aus den Zeilen ergibt; oberhalb von {hotThresholdC} hält Hitze die Saat auf.',
  deep: '{depthCm} sind mehr als das Doppelte der üblichen {usualCm}: Sämlinge kommen später und schwächer oder gar nicht.',
  'held-week':
    'Ein großer Teil dieser Vorhersage beruht darauf, dass sich die letzte Woche wiederholt. Im Frühjahr wird das um Wochen zu spät, im Herbst zu früh. Geben Sie für den Gang der Jahreszeit eine Breite an, oder mehr Temperaturen.',
  'thin-record':
    'Hinter dem, was danach angenommen ist, stehen weniger als sieben Tage Temperatur: Ein einzelner warmer oder kalter Tag wiegt schwer.',
  'too-cold-or-hot':
    'Bei diesen Temperaturen verspricht die Tabelle binnen eines Jahres keinen Sämling; gezählt wird deshalb nach {countDays, plural, one {# Tag} other {# Tagen}}. Mit countDays weiter schauen, oder säen, wenn der Boden zur Kultur passt.',
  'far-ahead':
    'Die Saat liegt {daysAhead, plural, one {# Tag} other {# Tage}} nach dem letzten Wert. So weit voraus ist dies eher, was die Jahreszeit meist bringt, als eine Vorhersage; fragen Sie wieder, wenn spätere Temperaturen bekannt sind.',
  'share-for-percent':
    'Eine Keimfähigkeit von {germinationPercent} % gilt wie gesendet: {germinationPercent} von hundert Samen. Waren {meantPercent} % gemeint, {meantPercent} senden.',
  'hot-first-day':
    'Am ersten Tag liegt die Saat {hours, plural, one {# Stunde} other {# Stunden}} über {hotThresholdC}; dann hält Hitze sie am leichtesten auf. Abends säen, in feuchten Boden.',
  extrapolated:
    '{hours, plural, one {# Stunde} other {# Stunden}} lang liegt die Saat kälter oder wärmer, als die Kultur je geprüft wurde; dort gilt eine Gerade bis null.',
  'killing-heat':
    'Nasse Saat liegt insgesamt mehr als {limitHours, plural, one {# Stunde} other {# Stunden}} über {limitC}: Was bis dahin nicht aufgegangen ist, gilt als tot.',
  slow: 'Der Aufgang dauert mehr als dreimal so lang wie im besten Fall: Saat, die lange liegt, ist Fäulnis, Krusten und Schädlingen ausgesetzt.',
  'old-test': 'Das Saatgut wurde am {testedOn} geprüft, über ein Jahr vor der Saat; prüfen Sie es erneut.',
  // Words that came as words.
  'as-said': '{words}',

  // What is kept of a bed: garden/bed.
  'source-stale':
    '{ageHours, select, none {Die Quelle des Ortes wurde noch nicht gefragt; das geschieht in wenigen Minuten.} other {Die Quelle des Ortes ist im Rückstand. Ihre letzte gute Antwort gilt weiter; sie ist {ageDays, plural, =0 {{ageHours, plural, =0 {keine Stunde} one {# Stunde} other {# Stunden}}} one {# Tag} other {# Tage}} alt.}}',
  'source-failing':
    '{ageHours, select, none {Die Quelle des Ortes hat noch nie brauchbar geantwortet, bei {failures, plural, one {einem Versuch} other {# Versuchen}}.} other {Die Quelle des Ortes hat {failures, plural, one {einmal} other {#-mal}} hintereinander versagt. Ihre letzte gute Antwort gilt weiter; sie ist {ageDays, plural, =0 {{ageHours, plural, =0 {keine Stunde} one {# Stunde} other {# Stunden}}} one {# Tag} other {# Tage}} alt.}}',
  'readings-to-come':
    'Zu diesem Beet sind Messwerte kommender Tage gespeichert, bis {lastDate}; sie bleiben außer Acht, denn heute ist der {todayDate}. Ging die Uhr des Loggers falsch oder stimmt das Jahr nicht: DELETE /v1/beds/{bed}/readings?from={deleteFrom}, und die Werte neu senden.',

  // Seed lots, and how much to sow: garden/lots.
  'lot-test':
    '{germinated} von {sown, plural, one {# Samen} other {# Samen}} haben gekeimt. Die Spanne ist, was eine solche Zählung in 80 von 100 Fällen offenlässt (Intervall nach Jeffreys).',
  'lot-packet':
    '{germinationPercent} % gelten wie angegeben: An wie vielen Samen gezählt wurde, ist nicht bekannt, deshalb gibt es keine Spanne.',
  'lot-unknown':
    'Weder eine Keimprobe noch die Keimfähigkeit auf der Packung ist angegeben; wie viel keimt, ist deshalb nicht bekannt.',
  'lot-not-aged':
    'Die Keimfähigkeit wird nicht auf heute umgerechnet: {why, select, partly {Dazu braucht es sowohl die Feuchte des Saatguts als auch die Lagertemperatur} undated {Wann sie bestimmt wurde, ist nicht angegeben} unpublished {Für diese Kultur sind keine verlässlichen Konstanten veröffentlicht} other {Die Gleichung der Lebensfähigkeit gilt für {moistureFromPercent} bis {moistureToPercent} % Feuchte und {storeFromC} bis {storeToC}}}.',
  'lot-aged':
    'Umgerechnet über {days, plural, one {einen Tag} other {# Tage}} bei {moisturePercent} % Feuchte und {storeC}, beides als gleichbleibend angenommen, mit der Gleichung der Lebensfähigkeit (Ellis, Roberts 1980; Konstanten: {sources}). Die Konstanten stammen von einzelnen Partien; nehmen Sie das als groben Anhalt.',
  'lot-constants-differ':
    'Es sind mehrere Sätze von Konstanten veröffentlicht, und sie widersprechen sich: „aged“ nennt, was jeder übrig lässt, der Prozentwert liegt in der Mitte, und die Spanne umfasst beide.',
  'lot-constants-of-kin':
    'Die Konstanten wurden an {kin, select, maize {Körnermais} beet {Zuckerrüben} rape {Raps (Brassica napus)} other {Braunem Senf (Brassica juncea)}}{otherKin, select, nothing {} maize { und Körnermais} beet { und Zuckerrüben} rape { und Raps (Brassica napus)} other { und Braunem Senf (Brassica juncea)}} gemessen.',
  'lot-age-unknown':
    'Weder das Jahr der Packung noch der Tag der Prüfung ist angegeben; über das Alter lässt sich nichts sagen.',
  'older-seed-later':
    'Älteres Saatgut geht auch später auf. Wie viel später, ist allgemein nicht veröffentlicht und bleibt außer Acht.',
  'test-before-use':
    'Auch gut gelagert hält dieses Saatgut etwa {storageYears, plural, one {ein Jahr} other {# Jahre}} (Knott’s Handbook, 1997), und es ist älter. Prüfen Sie vor der Saat einige Samen auf feuchtem Papier; bei gebeiztem Saatgut Handschuhe tragen.',
  'percent-or-share':
    'Eine Keimfähigkeit von {germinationPercent} % gilt wie gesendet: {germinationPercent} von hundert Samen. Waren {meantPercent} % gemeint, {meantPercent} senden.',
  field:
    'Von hundert Samen, die keimen, werden {isRange, select, yes {{fromPercent} bis {toPercent}} other {{fromPercent}}} zu Pflanzen, {whose, select, own {wie Sie angeben} other {wie Beete es ergeben haben}}{isRange, select, yes {; alle Anteile dazwischen gelten als gleich wahrscheinlich, das ist unsere Annahme} other {}}.',
  'one-lot-one-bed':
    'Alle Samen kommen aus einer Partie in ein Beet, und wie gut beide sind, ist nicht genau bekannt: Sind sie schlecht, ist es die ganze Saat. Deshalb ist mehr Saatgut nötig, als eine Division durch die Mittelwerte ergibt.',
  'poor-seed':
    'Von hundert solchen Samen keimen etwa {percent}, und auch die nur schwach: noch einmal prüfen, oder frisches Saatgut kaufen, statt so viel zu säen.',

  // How a sowing stands, and what counts have taught: garden/sowing and garden/learning.
  'verdict.wait':
    '{countedOn, select, none {Noch ist nichts zu sehen: {firstDate, select, none {Bei diesen Temperaturen kommt bis zur Zählung am {countDate} nichts} other {Die ersten Sämlinge sind ab dem {firstDate} zu erwarten}}.} other {{found, select, some {Am {countedOn} {seedlings, plural, one {wurde ein Sämling gezählt} other {wurden # Sämlinge gezählt}}{ofSeeds, select, none {} other { (bei {ofSeeds} Samen)}}; es können noch mehr kommen.} other {Am {countedOn} war noch nichts aufgegangen{mostRowsShow, select, yes {, während in den meisten Reihen schon etwas zu sehen wäre. In einem langsamen Beet kann noch etwas kommen: in ein paar Tagen noch einmal zählen, bevor Sie aufgeben.} other {; dass die Saat lebt, ist {livesPercent, plural, =0 {so gut wie ausgeschlossen} =100 {so gut wie sicher} one {bei # von 100 solchen Reihen zu erwarten} other {bei # von 100 solchen Reihen zu erwarten}}.{isPast, select, yes { In ein paar Tagen noch einmal zählen.} other {}}}}}}}}{moistUntilDate, select, none {} other { Bis {moistUntilDate} feucht halten.}}',
  'verdict.count-now':
    '{lastCountOn, select, none {{isPast, select, yes {Es müsste alles aufgegangen sein} other {Die Sämlinge sind fällig}}, und niemand hat gezählt. Zählen Sie, auch wenn nichts zu sehen ist: Ohne Zählung lässt sich nichts sagen.} other {Die letzte Zählung vom {lastCountOn} ist alt. Zählen Sie noch einmal, auch wenn nichts zu sehen ist.}}',
  'verdict.late':
    '{found, select, some {Am {countedOn} {seedlings, plural, one {wurde ein Sämling gezählt} other {wurden # Sämlinge gezählt}}{ofSeeds, select, none {} other { (bei {ofSeeds} Samen)}}: Die Saat ist spät, nicht verloren, und es können noch mehr kommen.} other {{mostRowsShow, select, yes {Am {countedOn} war noch nichts aufgegangen, während in den meisten Reihen schon etwas zu sehen wäre. In einem langsamen Beet kann noch etwas kommen: in ein paar Tagen noch einmal zählen, bevor Sie aufgeben.} other {Die Saat ist spät, nicht verloren: Dass sie lebt, ist {livesPercent, plural, =0 {so gut wie ausgeschlossen} =100 {so gut wie sicher} one {bei # von 100 solchen Reihen zu erwarten} other {bei # von 100 solchen Reihen zu erwarten}}. In ein paar Tagen noch einmal zählen.}}}}{moistUntilDate, select, none {} other { Bis {moistUntilDate} feucht halten.}}',
  'verdict.lost':
    'Dass nichts mehr kommt, ist {lostPercent, plural, =0 {so gut wie ausgeschlossen} =100 {so gut wie sicher} one {bei # von 100 solchen Reihen zu erwarten} other {bei # von 100 solchen Reihen zu erwarten}}. Neu säen.',
  'verdict.thin':
    'Am {countedOn} {seedlings, plural, one {wurde ein Sämling gezählt} other {wurden # Sämlinge gezählt}}{ofSeeds, select, none {} other { (bei {ofSeeds} Samen)}}, {beforeOn, select, none {weniger, als Beete bei dieser Kultur ergeben, und es kommt kaum noch etwas nach. Füllen Sie die Lücken mit einer neuen Saat, oder pflanzen Sie enger.} other {und am {beforeOn} noch {beforeSeedlings}. Etwas hat sie geholt, oder eine der Zählungen stimmt nicht: nach Schnecken, Vögeln und am Boden umgefallenen Sämlingen sehen, noch einmal zählen und nachsäen, was kahl ist.}}',
  'verdict.good':
    'Am {countedOn} {seedlings, plural, one {wurde ein Sämling gezählt} other {wurden # Sämlinge gezählt}}{ofSeeds, select, none {} other { (bei {ofSeeds} Samen)}}: {isThinned, select, yes {mit den ausgezogenen } other {}}so viele, wie Beete ergeben, oder mehr.',
  counts:
    'Nach {counts, plural, =0 {} one {einer Zählung dieser Saat} other {# Zählungen dieser Saat}}{otherSowings, plural, =0 {} one {{counts, plural, =0 {den Zählungen} one { und denen} other { und denen}} einer anderen Saat in diesem Beet} other {{counts, plural, =0 {den Zählungen} one { und denen} other { und denen}} von # anderen Saaten in diesem Beet}}{isLost, select, yes {: Bei 95 oder mehr von 100 solchen Reihen kommt nichts.} other {{timeFactorMiddle, select, none {{standPercentMiddle, select, none { lässt sich noch nichts sagen, was nicht schon die Spannen der Kultur sagen.} other {: {crop} ergibt {standPercentMiddle} von 100 Sämlingen, die ein Labor ergäbe{standPercentFrom, select, none {} other {{standPercentTo, select, none {} other { ({standPercentFrom} bis {standPercentTo})}}}}.}}} other {: {crop} braucht {timeFactorMiddle}-mal so lang wie nach der Tabelle{timeFactorFrom, select, none {} other {{timeFactorTo, select, none {} other { ({timeFactorFrom} bis {timeFactorTo})}}}}{standPercentMiddle, select, none {} other { und ergibt {standPercentMiddle} von 100 Sämlingen, die ein Labor ergäbe{standPercentFrom, select, none {} other {{standPercentTo, select, none {} other { ({standPercentFrom} bis {standPercentTo})}}}}}}.}}}}',
  'task.sow-again':
    '{isTooLate, select, yes {Für eine neue Saat ist es in diesem Jahr zu spät.} other {Neu säen. {by, select, none {Ob dafür noch Zeit ist, lässt sich aus dem Gespeicherten nicht sagen.} other {{from, select, none {Zeit ist} other {Zeit dafür ist ab dem {from} und}} bis zum {by}.}}}}',
  'task.fill-gaps':
    '{isTooLate, select, yes {Um Lücken mit einer neuen Saat zu füllen, ist es in diesem Jahr zu spät.} other {Lücken mit einer neuen Saat füllen. {by, select, none {Ob dafür noch Zeit ist, lässt sich aus dem Gespeicherten nicht sagen.} other {{from, select, none {Zeit ist} other {Zeit dafür ist ab dem {from} und}} bis zum {by}.}}}}',
  'task.count': 'Zählen, was aufgegangen ist, auch wenn nichts zu sehen ist.',
  'task.keep-moist':
    'Die Saat bis zum {to} feucht halten. Wo das Gießen eingeschränkt ist, gehen die örtlichen Regeln vor.',
  'task.mind-heat': 'Hitze über {thresholdC} an der Saat.',
  'task.mind-cold': 'Boden unter {thresholdC} schadet dieser Saat.',
  'task.thin':
    'Die Reihe auf Abstand verziehen, sobald die Sämlinge sich berühren; vorher gießen, damit die bleibenden nicht abreißen.',
  'task.harden-off': 'Die Schalen tagsüber hinausstellen, jeden Tag länger, und nachts hereinholen.',
  'task.plant-out':
    'Auspflanzen, wenn die Nächte es erlauben; vorher die Wettervorhersage ansehen und Vlies bereithalten. Für den Raum sind {roomC} angenommen.',
  'task.harvest': 'Die ersten können erntereif sein.',
  'frost-before-harvest':
    '{crop}: In der Mitte der vergangenen Jahre setzt Frost um den {endDate} ein Ende, bevor etwas erntereif ist; unter Glas oder Abdeckung kann es weitergehen.',

  // Plans: garden/plan.
  'gap.too-hot':
    '{crop}: Für diese Wochen müsste die Saat in Boden aufgehen, der dafür in den meisten Jahren zu heiß ist, selbst im Schatten; in Schalen vorgezogen wird sie nicht rechtzeitig fertig.',
  'gap.too-cold':
    '{crop}: Für diese Wochen müsste die Saat aufgehen oder ausgepflanzt werden, während es dafür in den meisten Jahren zu kalt ist.',
  'gap.frost':
    '{crop}: {isTender, select, yes {In den meisten Jahren käme vor diesen Wochen der Frost.} other {In den meisten Jahren käme vor diesen Wochen starker Frost; unter einer Abdeckung kann die Kultur stehen bleiben.}}',
  'gap.too-late': '{crop}: Für diese Wochen hätte vor heute gesät werden müssen.',
  'gap.maturity-unknown':
    '{crop}: Wie lang es bis zur Ernte dauert, ist hier nicht bekannt. Zwiebeln warten auf die Tageslänge ihrer Sorte, manche Kulturen auf Jahre, und zu eigenen Zeilen ist nichts angegeben. Säen Sie, wenn ein Saatfenster offen ist.',
  'start-indoors':
    '{roomC, select, none {Oder in Schalen in einem kühlen Raum vorziehen und auspflanzen, wenn die Pflanzen so weit sind.} other {In Schalen in einem Raum von {roomC} vorziehen und auspflanzen, wenn die Pflanzen so weit sind und die Nächte es erlauben. Eine Saat ins Beet würde diese Wochen in den meisten Jahren nicht erreichen.}}',
  shade:
    '{hotHours, select, none {Die Reihe zur Hälfte beschatten, bis Sämlinge zu sehen sind: Ohne Schatten ginge in den meisten Jahren zu wenig auf. Was Schatten bewirkt, ist errechnet, nicht gemessen.} other {In der Mitte der Jahre liegt die Saat {hotHours} Stunden in Boden von über {hotThresholdC}, bis die Hälfte aufgegangen ist. Die Reihe in den heißen Stunden zur Hälfte beschatten und den Schatten wegnehmen, sobald Sämlinge zu sehen sind.}}',
  'sow-in-evening':
    'Abends säen und mit kühlem Wasser gießen: Die ersten Stunden, in denen Hitze die Saat am leichtesten aufhält, fallen dann in die Nacht. Wo das Gießen eingeschränkt ist, gelten die örtlichen Regeln.',
  'lies-long':
    'Die Saat liegt lange in kaltem Boden, wo sie faulen oder gefressen werden kann: Ein Vlies, oder Schalen im Haus, wären sicherer.',
  harvest:
    'Veröffentlicht sind {fromDays} bis {toDays} Tage bis zur Reife, {countedFrom, select, sowing {ab der Saat; sie zählen ab dem Tag, an dem die Hälfte aufgegangen ist, weniger die Tage der Tabelle bei {nominalC}} other {ab dem Auspflanzen}}. Geerntet wird {pickFromDays} bis {pickToDays} Tage danach, um deren Mitte; das ist die Ernte von {weeks, plural, one {einer Woche} other {# Wochen}} (übliche Praxis, ohne Quelle). Tage unter {fullPaceHours} Stunden bremsen das Wachstum, bei {halfPaceHours} Stunden auf die Hälfte (Faustregel, übliche Praxis, ohne Quelle).',
  'even-emergence':
    'Die Saaten liegen so, dass sie in gleichen Abständen aufgehen und reif werden: dichter, wo der Boden abkühlt, weiter auseinander, wo er wärmer wird.',
  'chart-time':
    'Die Hälfte ist aufgegangen, wenn die Tabelle es sagt; Beete haben bis zu {timesInBeds}-mal so lang gebraucht, und dann wird alles entsprechend später reif.',
  seeds:
    'Gerechnet ist mit einer Pflanze für jede gewünschte, mit Saatgut so gut wie dem der Tabelle, nach dem Aufgang an diesem Datum und dem, was Beete ergeben haben.',
  'stays-put': '{crop} verträgt kein Umpflanzen; deshalb wird nichts im Haus vorgezogen.',
  indoors:
    'Schalen gelten als so warm wie der Raum, {roomC}; Pflanzen sind {weeksInTrays, plural, one {# Woche} other {# Wochen}} nach dem Aufgehen so weit, werden {hardeningDays, plural, one {# Tag} other {# Tage}} abgehärtet und kommen hinaus, wenn die Nächte es erlauben (übliche Praxis, ohne Quelle).',
  'thin-years':
    '{years, plural, one {# Jahr ist} other {# Jahre sind}} wenig: Wie sicher eine Saat ist, lässt sich kaum sagen.',
  'frost-unknown':
    'Ohne Lufttemperaturen lässt sich Frost aus dem Boden nicht ablesen: Der Plan beachtet ihn nicht. Senden Sie die täglichen Tiefstwerte der Luft.',
  'weather-of-growth':
    '{crop}: Was das Wetter nach dem Aufgehen bewirkt, bleibt bis auf Frost und kurze Tage außer Acht. Hitze lässt manche Kultur schießen, andere leiden unter Trockenheit und Schädlingen.',

  // A bed's calendar: garden/calendar.
  'event.sow': '{crop} säen{where, select, indoors { (im Haus)} other {}}',
  'event.sow.detail':
    '{seeds, select, none {Säen} other {{seeds, plural, one {# Samen säen} other {# Samen säen}}}}: {where, select, indoors {im Haus, für {bed}} other {{bed}}}{time, select, none {, wie geplant} other {, um {time} Uhr}}. Bei gebeiztem Saatgut Handschuhe tragen und das Etikett beachten.',
  'event.keep-moist': '{crop} feucht halten',
  'event.keep-moist.detail':
    'Saat, die zu keimen begonnen hat, stirbt, wenn sie austrocknet. Sanft gießen, soweit die örtlichen Regeln es erlauben.',
  'event.look-for-seedlings': '{crop}: nach Sämlingen sehen',
  'event.look-for-seedlings.detail':
    '{halfDate, select, none {Bis zum Tag der Zählung ist weniger als die Hälfte zu erwarten} other {Die Hälfte derer, die kommen, ist um den {halfDate} aufgegangen}}. Im Beet sind {fromPercent} bis {toPercent} von hundert Samen zu erwarten; zählen Sie, was Sie sehen.',
  'event.look-for-seedlings.planned':
    'Nach vergangenen Jahren ist von dieser geplanten Saat etwa jetzt die Hälfte aufgegangen.',
  'event.thin': '{crop} verziehen',
  'event.thin.detail':
    'Die meisten sollten aufgegangen und groß genug zum Auswählen sein: die schwächsten ausziehen und notieren, wie viele es waren.',
  'event.feed': '{crop} düngen',
  'event.feed.detail':
    'Wo der Boden mager ist oder die Blätter blass sind. Nicht mehr geben, als das Etikett sagt; guter Boden braucht nichts.',
  'event.harden-off': '{crop} abhärten',
  'event.harden-off.detail':
    'Tagsüber hinaus, jeden Tag länger, zuerst im Schatten und windgeschützt; zur Nacht wieder herein.',
  'event.plant-out': '{crop} auspflanzen',
  'event.plant-out.detail':
    'Wohin: {bed}. Nach vergangenen Jahren erlauben es die Nächte von jetzt an: vorher die Wettervorhersage ansehen und bei Frost warten.',
  'event.first-harvest': '{crop}: erste Ernte',
  'event.first-harvest.detail': '{bed}: Die frühesten Sorten sind etwa jetzt reif, nach ihren veröffentlichten Tagen.',
  'event.last-harvest': '{crop}: späte Ernte',
  'event.last-harvest.detail': '{bed}: Die spätesten Sorten sind etwa jetzt reif, nach ihren veröffentlichten Tagen.',
  'event.sow-again': '{crop}: letzter Tag für eine neue Saat',
  'event.sow-again.detail':
    'Sollte die Saat vom {sownOn} nichts werden, lohnt eine neue nach vergangenen Jahren bis zu diesem Tag.',
  'event.heat': '{severity, select, severe {Starke Hitze} other {Hitze}} über der Saat: {crop}',
  'event.heat.detail': 'Bis zu {peakC} an der Saat; über {thresholdC} hält Hitze sie auf.',
  'event.frost': 'Frost kann schaden: {crops}',
  'event.frost.detail':
    'Vorhergesagt ist eine Nacht mit etwa {minC} in der Luft; unter klarem Himmel kann es dort kälter werden ({bed}). Die Pflanzen vor der Dämmerung abdecken und am Tag wieder aufdecken.',

  // What is new: garden/alerts.
  'news.hot-spell':
    '{crop}, gesät am {sownOn}, Beet {bed}: Hitze steht bevor. Vom {from} bis zum {to} wird es an der Saat bis zu {peakC} warm; über {thresholdC} hält Hitze sie auf ({severity, select, severe {stark} other {mäßig}}).{spells, plural, one {} other { Insgesamt stehen # Hitzezeiten bevor.}} Schatten und Wasser helfen; beachten Sie die örtlichen Regeln zum Gießen.',
  'news.emergence-shift':
    '{crop}, gesät am {sownOn}, Beet {bed}: {halfOn, select, none {Bis zur Zählung ist nicht mehr zu erwarten, dass die Hälfte aufgeht{beforeOn, select, none {} other {; zuvor war es der {beforeOn}}}.} other {{beforeOn, select, none {Die Hälfte ist nun doch zu erwarten, und zwar am {halfOn}.} other {Die Hälfte ist nun am {halfOn} zu erwarten, {shiftDays, plural, one {# Tag} other {# Tage}} {isLater, select, yes {später} other {früher}} als zuletzt gemeldet ({beforeOn}).}}}}',
  'news.frost':
    '{crop}, gesät am {sownOn}, Beet {bed}: Frost kann den Sämlingen schaden. Für den {date} sind {minC} in der Luft vorhergesagt{nights, plural, one {} other {, und Frost für insgesamt # Nächte}}. Decken Sie sie über Nacht ab; in Senken und in stillen, klaren Nächten ist es kälter, als eine Vorhersage der Luft sagt.',
  'news.window-open':
    '{crop}, Beet {bed}: Bis zum {to} ist eine gute Zeit zum Säen, nach den vergangenen Jahren am Ort. Sehen Sie zuerst nach dem Boden: Ob er sich bearbeiten lässt, ist hier nicht bekannt.',

  // Why a source could not be asked, and a message not be delivered: garden/store.
  'source.format': 'Das Format „{format}“ ist nicht bekannt.',
  'source.address': 'Die Adresse der Quelle ist nicht brauchbar:',
  'source.redirects':
    'Die Quelle leitet mehr als {maxRedirects, plural, one {einmal} other {#-mal}} an eine andere Adresse weiter.',
  'source.redirect-nowhere': 'Die Quelle leitet an etwas weiter, das keine Adresse ist.',
  'source.redirect-unencrypted': 'Die Quelle leitet von https an eine Adresse ohne Verschlüsselung weiter.',
  'source.private':
    'Der Host {host} der Quelle hat keine öffentliche Adresse. Wer diesen Dienst betreibt, kann das mit ALLOW_PRIVATE_SOURCES=1 erlauben.',
  'source.connection':
    'Die Quelle {fault, select, unaccepted {hat die Verbindung nicht rechtzeitig angenommen} unanswered {hat{seconds, select, none {} other { nach {seconds} s}} noch nicht zu antworten begonnen} silent {ist mitten in der Antwort verstummt} unnamed {hat einen Hostnamen, der nirgendwohin führt} refused {hat die Verbindung abgelehnt} broken {hat die Verbindung abgebrochen} unreachable {ist nicht erreichbar} untrusted {hat kein vertrauenswürdiges Zertifikat} malformed {antwortet nicht, wie HTTP es verlangt} slow {hat zu lange gebraucht{seconds, select, none {} other {, mehr als {seconds} s}}} other {konnte nicht gefragt werden{errorCode, select, none {} other { ({errorCode})}}}}.',
  'source.pages-slow': 'Die Quelle hat mit all ihren Seiten zu lange gebraucht.',
  'source.status':
    'Die Quelle hat mit Status {status} geantwortet{reason, select, missing {: Unter dieser Adresse gibt es nichts} refusing {: Sie antwortet diesem Dienst nicht} troubled {: Sie hat selbst Schwierigkeiten} moved {: Sie leitet anderswohin weiter} other {}}.',
  'source.too-often': 'Die Quelle wurde zu oft gefragt (429) und möchte eine Weile in Ruhe gelassen werden.',
  'source.coding': 'Die Quelle packt ihre Antwort auf eine Weise, um die nicht gebeten wurde.',
  'source.damaged': 'Die gepackte Antwort der Quelle ist beschädigt.',
  'source.too-large': 'Die Antwort der Quelle ist größer als {megabytes} MB.',
  'source.empty': 'Die Antwort der Quelle ist leer.',
  'source.not-json':
    '{isPage, select, yes {Die Quelle hat mit einer Webseite statt mit JSON geantwortet.} other {Die Antwort der Quelle ist kein JSON.}}',
  'source.not-form':
    'Die Antwort der Quelle ist nicht {form, select, archive {das JSON eines Tagesarchivs, mit properties.parameter und parameters} grid {das JSON eines Vorhersagerasters, mit temperature, maxTemperature oder minTemperature} observations {das JSON einer Schnittstelle für Beobachtungen, mit einer Liste unter value} other {das JSON eines Datastreams, mit seiner unitOfMeasurement}}{at, select, none {} other { (bei {at})}}.',
  'source.no-air': 'Die Datei der Quelle enthält keine Lufttemperaturen.',
  'source.file': 'Die Datei der Quelle ist nicht brauchbar:',
  'source.unit':
    'Die Quelle {value, select, none {misst} other {gibt {value}}} {unit, select, none {ohne Einheit} other {in „{unit}“}}{value, select, none {} other { an}}; nötig ist °C, °F oder K.',
  'source.unit-untold': 'Die Quelle nennt ihre Einheit nicht. Fragen Sie mit $expand=Datastream in der Adresse danach.',
  'source.no-date': 'Die Quelle hat einen Wert für „{text}“, und das ist kein Datum.',
  'source.no-time': 'Die Quelle hat {value} für „{text}“, und das ist keine Zeit.',
  'source.no-observations': 'Die Quelle hat für die gefragte Zeit keine Beobachtungen.',
  'source.other-host': 'Die nächste Seite der Quelle liegt auf einem anderen Host.',
  'source.circle': 'Die Seiten der Quelle verweisen im Kreis aufeinander.',
  'source.pages':
    'Die Quelle hat für die gefragte Zeit mehr als {maxPages, plural, one {# Seite} other {# Seiten}}. Fragen Sie mit $top nach größeren, oder mit dem Platzhalter from nach weniger.',
  'source.mixed': 'Die Quelle antwortet mit mehreren Datastreams; nennen Sie einen davon in der Adresse.',
  'source.no-day': 'Die Quelle hat geantwortet, aber ohne einen brauchbaren Tag.',
  'source.no-room':
    'Ihre Tage werden nicht gespeichert: Für mehr als {megabytes} Megabyte Messwerte und Luft ist kein Platz. Löschen Sie, was nicht gebraucht wird.',
  'source.not-kept': 'Der Dienst konnte nicht speichern, was die Quelle sagt.',
  'delivery.address':
    'Die Adresse{isRedirect, select, yes {, an die weitergeleitet wird,} other {}} ist nicht brauchbar:',
  'delivery.redirects':
    'Der Empfänger leitet mehr als {maxRedirects, plural, one {einmal} other {#-mal}} an eine andere Adresse weiter.',
  'delivery.redirect-nowhere': 'Der Empfänger leitet an etwas weiter, das keine Adresse ist.',
  'delivery.redirect-scheme': 'Der Empfänger leitet an ein anderes Schema weiter, {scheme}.',
  'delivery.private':
    'Der Host {host} hat keine öffentliche Adresse. Wer diesen Dienst betreibt, kann das mit ALLOW_PRIVATE_WEBHOOKS=1 erlauben.',
  'delivery.connection':
    'Der Empfänger {fault, select, unaccepted {hat die Verbindung nicht rechtzeitig angenommen} unanswered {hat{seconds, select, none {} other { nach {seconds} s}} noch nicht zu antworten begonnen} silent {ist mitten in der Antwort verstummt} unnamed {hat einen Hostnamen, der nirgendwohin führt} refused {hat die Verbindung abgelehnt} broken {hat die Verbindung abgebrochen} unreachable {ist nicht erreichbar} untrusted {hat kein vertrauenswürdiges Zertifikat} malformed {antwortet nicht, wie HTTP es verlangt} slow {hat zu lange gebraucht{seconds, select, none {} other {, mehr als {seconds} s}}} other {konnte nicht gefragt werden{errorCode, select, none {} other { ({errorCode})}}}}.',
  'delivery.status':
    'Der Empfänger hat mit Status {status} geantwortet{reason, select, missing {: Unter dieser Adresse gibt es nichts} refusing {: Er nimmt von diesem Dienst keine Nachrichten an} troubled {: Er hat selbst Schwierigkeiten} moved {: Er leitet anderswohin weiter} other {}}.',
  'delivery.gone': 'Der Empfänger hat mit Status 410 geantwortet: Er möchte keine Nachrichten mehr.',
  'delivery.too-often': 'Dem Empfänger wurde zu viel gesendet (429), und er möchte eine Weile in Ruhe gelassen werden.',
  'delivery.not-sent': 'Der Dienst konnte die Nachricht nicht senden.',
  'delivery.key-lost':
    'Das Geheimnis ist verloren. Löschen Sie das Abonnement mit DELETE, und legen Sie es mit PUT neu an.',

  // The names of crops within a sentence.
  'crop.asparagus': 'Spargel',
  'crop.lima-bean': 'Limabohne',
  'crop.snap-bean': 'Buschbohne',
  'crop.beet': 'Rote Bete',
  'crop.cabbage': 'Kohl',
  'crop.carrot': 'Möhre',
  'crop.cauliflower': 'Blumenkohl',
  'crop.celery': 'Sellerie',
  'crop.sweet-corn': 'Zuckermais',
  'crop.cucumber': 'Gurke',
  'crop.eggplant': 'Aubergine',
  'crop.lettuce': 'Salat',
  'crop.muskmelon': 'Zuckermelone',
  'crop.okra': 'Okra',
  'crop.onion': 'Zwiebel',
  'crop.bunching-onion': 'Winterheckenzwiebel',
  'crop.parsley': 'Petersilie',
  'crop.parsnip': 'Pastinake',
  'crop.pea': 'Erbse',
  'crop.pepper': 'Paprika',
  'crop.radish': 'Radieschen',
  'crop.spinach': 'Spinat',
  'crop.tomato': 'Tomate',
  'crop.turnip': 'Speiserübe',
  'crop.watermelon': 'Wassermelone',
  'crop.own-rows': 'eigene Kultur',
} as const satisfies Catalogue;
