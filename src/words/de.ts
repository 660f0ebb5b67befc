import type { Catalogue } from './facts.js';

/** Start and end of every field fault: whether a value was sent, and which. */
const MISSING = '{wasKind, select, missing {fehlt; es } other {}}';
const WAS =
  '{wasKind, select, missing {} list {; gesendet wurde eine Liste von {was}} emptyList {; gesendet wurde eine leere Liste} object {; gesendet wurde ein Objekt} largeNumber {; gesendet wurde eine zu große Zahl} other {; gesendet wurde {was}}}';

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
    '{about, select, plan {Vergangene Jahre sind nicht bekannt: Der Plan gilt für ein übliches Jahr, aus den Mittelwerten des Ortes. Wie oft er fehlschlägt, lässt sich nicht sagen.} windows {Vergangene Jahre sind nicht bekannt: Jeder Tag ist nach einem üblichen Jahr beurteilt, das die Mittelwerte des Ortes ergeben und in dem kein Tag aus der Reihe fällt. Wie oft er misslingt, ist nicht zu sagen.} other {Nach dem letzten Wert vom {lastDate} geht der Boden, von seinem heutigen Stand aus, so weiter, wie ihn die Mittelwerte des Ortes in einem üblichen Jahr ergeben: Vergangene Jahre sind nicht bekannt. Die Spannen sind deshalb weit.}}',
  'past-years':
    '{about, select, plan {Der Plan folgt daraus, was jede Saat in {years, plural, one {# vergangenen Jahr} other {# vergangenen Jahren}} ergeben hätte; eine Woche gilt als erreicht, wo sie es in der Hälfte von ihnen oder öfter war.} windows {Jeder Tag ist danach beurteilt, was die Saat in {years, plural, one {# vergangenen Jahr} other {# vergangenen Jahren}} getan hätte, und jedes zählt etwa gleich: Regen und Schädlinge bleiben außen vor.} other {Nach dem letzten Wert vom {lastDate} geht der Boden, von seinem heutigen Stand aus, so weiter wie in {years, plural, one {# vergangenen Jahr} other {jedem von # vergangenen Jahren}}. Die Daten sind deren Mitte; die Tage zeigen ihr Mittel, in dem einzelne heiße und kalte Tage geglättet sind.}}',
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
    '{about, select, soil {Die letzten Tage liegen {daysAhead, plural, one {# Tag} other {# Tage}} nach dem letzten Wert: So weit voraus ist dies eher, was die Jahreszeit meist bringt, als eine Schätzung.} other {Die Saat liegt {daysAhead, plural, one {# Tag} other {# Tage}} nach dem letzten Wert. So weit voraus ist dies eher, was die Jahreszeit meist bringt, als eine Vorhersage; fragen Sie wieder, wenn spätere Temperaturen bekannt sind.}}',
  'share-for-percent':
    'Eine Keimfähigkeit von {germinationPercent} % gilt wie gesendet: {germinationPercent} von hundert Samen. Waren {meantPercent} % gemeint, {meantPercent} senden.',
  'hot-first-day':
    'Am ersten Tag liegt die Saat {hours, plural, one {# Stunde} other {# Stunden}} über {hotThresholdC}; dann hält Hitze sie am leichtesten auf. Abends säen, in feuchten Boden.',
  extrapolated:
    '{hours, plural, one {# Stunde} other {# Stunden}} lang liegt die Saat kälter oder wärmer, als die Kultur je geprüft wurde; dort gilt eine Gerade bis null.',
  'killing-heat':
    'Nasse Saat liegt insgesamt mehr als {limitHours, plural, one {# Stunde} other {# Stunden}} über {limitC}: Was bis dahin nicht aufgegangen ist, gilt als tot.',
  slow: '{about, select, crop {{crop, select, asparagus {Langsame Saat: Die Hälfte war bei {warmC} nach 10 Tagen aufgegangen, bei {mildC} nach 24 und bei {coolC} nach 53. Halten Sie die Reihe feucht, und lassen Sie sie in Ruhe.} parsley {Geben Sie nicht auf: Auf dem Feld kamen die ersten Sämlinge frühestens zweieinhalb Wochen nach der Saat, und drei Wochen lang kamen weitere nach. Aus hundert Samen kamen nur 14 bis 50.} other {Selbst im besten Fall war die Hälfte erst nach 14 Tagen aufgegangen, bei {coolC} nach 27. Halten Sie die Reihe feucht, und markieren Sie sie, etwa mit ein paar Radieschen.}}} other {Der Aufgang dauert mehr als dreimal so lang wie im besten Fall: Saat, die lange liegt, ist Fäulnis, Krusten und Schädlingen ausgesetzt.}}',
  'old-test': 'Das Saatgut wurde am {testedOn} geprüft, über ein Jahr vor der Saat; prüfen Sie es erneut.',
  // Soil temperatures, from src/answers/soil.
  room: 'Erde in einer abgedeckten Schale gilt als so warm wie der Raum, {roomC} bei Tag und Nacht; in einer offenen, nassen Schale liegt sie etwa {belowK} darunter, auf einer Heizmatte darüber.',
  'soil-from-air':
    'Die Bodentemperatur ist durch Wärmeleitung aus der Lufttemperatur berechnet, unter der Oberfläche von {kind, select, open_ground {offenem Boden} raised_bed {einem Hochbeet} pot {einem Topf} tray {einer Schale} indoors {einem Beet im Haus} other {einem Beet}}: {cover, select, bare {unbedeckt} grass {kurzes Gras} mulch {Mulch} black_film {schwarze Folie} clear_film {klare Folie} fleece {Vlies} other {unbedeckt}}, {moisture, select, rain {so feucht, wie der Regen ihn lässt} moist {feucht gehalten} wet {nass gehalten} dry {trocken, bis gegossen wird} other {feucht}}, {shadePercent, plural, =0 {ohne Schatten} one {zu # % beschattet} other {zu # % beschattet}}{containerDepthCm, select, none {} other {, angenommen sind {containerDepthCm} Tiefe{containerWidthCm, select, none {, zwischen anderen stehend} other { und {containerWidthCm} Breite, die Seiten in der Sonne}}}}. {checkedOn, select, grassland {Tagesmittel in {checkedDepthCm} Tiefe irrten um {meanErrorK} (quadratisches Mittel, die mittlere von 99 grasbewachsenen Stationen); der Tagesgang ist dort nicht geprüft.} other {Auf nacktem Boden wurde dies mit einer Fläche in einem trockenen Jahr verglichen: In {checkedDepthCm} Tiefe irrten Tagesmittel um {meanErrorK} und Tageshöchstwerte um {maxErrorK} (quadratisches Mittel).}}{isChecked, select, yes {} other { Art, Abdeckung, Wasser oder Schatten dieses Beetes sind nicht mit Messungen verglichen.}}',
  'soil-before':
    'Der Boden erinnert sich an die Wochen davor: Er ist vom {fromDate} an verfolgt, davor gilt der übliche Gang des Jahres{isShort, select, yes {, was noch zu spüren sein kann; senden Sie auch die Lufttemperaturen der zwei Monate davor} other {}}.',
  'climate-unknown':
    '{lacks, select, rain {Der Jahresniederschlag ist nicht bekannt: Ein durchschnittliches Klima steht dafür ein. Genauer wird es mit where.place.annualRainMm.} other {Weniger als ein Jahr Lufttemperaturen ist bekannt: Ein durchschnittliches Klima steht dafür ein. Genauer wird es mit einem Jahr oder mehr und where.place.annualRainMm.}}',
  'depth-moved':
    'Der Fühler misst in {probeDepthCm}, die Saat liegt in {depthCm} Tiefe: {direction, select, down {Seine Werte sind durch Wärmeleitung nach unten gerechnet.} other {Was der Tagesgang auf dem Weg nach unten verloren hat, ist ihm zurückgegeben. Die so gefundenen Stunden irren um {errorFromK} bis {errorToK} (von {checkedFromCm} auf {checkedToCm}, eine nackte Fläche).}}',
  'soil-not-measured':
    'Ein Teil der gesendeten Bodenreihe sagt selbst, dass er nicht gemessen ist: Er gilt, wie er ist, und als so unsicher, wie er sagt oder wie solche Werte meist sind.',
  'snow-supposed':
    'Nach Tagen mit Frost ist Schnee angenommen, der den Boden von der Luft trennt: Darunter gibt es kaum einen Tagesgang, und der Boden bleibt wärmer. Wo kein Schnee liegt, ist er kälter als hier.',
  'air-means-only':
    'Von einigen Tagen ist nur das Mittel der Luft bekannt. Sonnenschein und Tagesgang folgen daraus, wie weit die anderen Tage schwanken, oder es gelten {swingK}, wenn es solche nicht gibt: Der Boden kann um Grade danebenliegen. Senden Sie von jedem Tag den tiefsten und den höchsten Wert.',
  'air-not-used':
    'Das Beet steht im Haus; gesendete Lufttemperaturen bleiben deshalb unbenutzt, es gilt die des Raumes (roomC).',
  'depth-not-moved':
    'Der Fühler misst in {probeDepthCm}, die Saat liegt in {depthCm} Tiefe; weniger als zwei Tage Messwerte am Stück reichen nicht, um umzurechnen, und die Werte gelten, wie sie sind.',
  'probe-too-deep':
    'Der Fühler in {probeDepthCm} liegt zu tief, um den Tagesgang in {depthCm} zu zeigen: {isLevelUsed, select, yes {Er berichtigt die Höhe dessen, was aus der Luft folgt.} other {Sein Tagesmittel gilt, mit dem Gang eines üblichen Tages. Legen Sie einen Fühler näher an die Saat, oder senden Sie Lufttemperaturen.}}',
  'room-as-measured':
    'Am letzten Tag maß der Fühler im Mittel {heldC}, für den Raum sind {roomC} angegeben: Nach den Messwerten gilt der Wert des Fühlers.',
  'probe-swings-oddly':
    'Zwischen Tag und Nacht schwankt der Fühler {swing, select, less {viel weniger} other {viel mehr}}, als diese Luft es in einem solchen Beet erwarten lässt. Prüfen Sie seine Tiefe, seine Lage und die Art des Beetes.',
  'probe-and-air-disagree':
    'Der Fühler zeigt Tag für Tag {offK} {direction, select, warmer {mehr} other {weniger}}, als diese Luft es in einem solchen Beet erwarten lässt. Prüfen Sie Einheit, Tiefe, Ort und Art des Beetes, und wo der Fühler liegt.',
  'unlike-the-air':
    'Der Fühler in {depthCm} zeigt in {hours, plural, one {# Stunde} other {# Stunden}} etwas, das die Luft nicht erklärt, zuerst am {firstDate} um {firstTime}: War er herausgezogen, oder lag er in der Sonne? Die Werte gelten, wie sie sind, lehren das Modell aber nichts.',
  'hours-filled':
    '{hours, plural, one {# Stunde hatte} other {# Stunden hatten}} keine Temperatur, {percent, plural, one {# %} other {# %}} der gefragten bis zum letzten Wert; sie sind aus dem ergänzt, was die Luft im Beet ergibt, oder aus den Stunden ringsum.',
  'coarse-step':
    'Messwerte, die mehr als {stepHours, plural, one {# Stunde} other {# Stunden}} auseinanderliegen, verfehlen Nachmittag und Nacht. Messen Sie öfter.',
  'no-swing':
    'Mittelwerte allein zeigen keine heißen Nachmittage oder kalten Nächte: Hitze und Kälte werden nicht gesucht, und die Daten können irren. Senden Sie von jedem Tag den tiefsten und den höchsten Wert oder stündliche Messwerte.',
  'some-days-without-swing':
    'Von einigen Tagen seit der Saat ist nur das Mittel bekannt; heiße Nachmittage und kalte Nächte bleiben da ungesehen.',

  // Remedies, from src/answers/forecast.
  'action.shade':
    'Beschatten Sie die Reihe in den heißen Stunden zur Hälfte: nachmittags an der Saat etwa {coolerK} kühler ({coolerFromK} bis {coolerToK}). Diese Grade sind berechnet, nicht in einem Saatbett gemessen. Nehmen Sie den Schatten weg, sobald sich Sämlinge zeigen.',
  'action.keep-wet':
    'Halten Sie die Oberfläche in den heißen Stunden {moisture, select, moist {feucht} other {nass}}: nachmittags an der Saat etwa {coolerK} kühler ({coolerFromK} bis {coolerToK}); gut belegt ist das nicht. Gießen Sie wenig und oft, und beachten Sie örtliche Regeln zum Gießen.',
  'action.cover':
    '{about, select, cold {Wärmen Sie das Beet vor der Saat: Vlies oder gelochte Folie hielt den Boden in {depthCm} Tiefe im Mittel {changeFromK} bis {changeToK} wärmer; in klaren, windstillen Frostnächten hilft sie nicht.} other {{cover, select, mulch {Decken Sie die Reihe während der Hitze locker mit Stroh oder einem Brett ab: nachmittags an der Saat etwa {changeK} kühler ({changeFromK} bis {changeToK}), berechnet und dort nicht gemessen. Auch die Nächte bleiben wärmer. Sehen Sie täglich darunter nach, und decken Sie auf, wenn sich der erste Sämling zeigt.} black_film {Nehmen Sie die schwarze Folie während der Hitze ab: nachmittags an der Saat etwa {changeK} kühler ({changeFromK} bis {changeToK}).} clear_film {Nehmen Sie die klare Folie während der Hitze ab: nachmittags an der Saat etwa {changeK} kühler ({changeFromK} bis {changeToK}).} other {Nehmen Sie das Vlies während der Hitze ab: nachmittags an der Saat etwa {changeK} kühler ({changeFromK} bis {changeToK}).}}}}',
  'action.sow-in-evening':
    'Säen Sie um {at} statt um {insteadOf}, mit kühlem Wasser: Die ersten Stunden der Saat, in denen Hitze sie am leichtesten aufhält, fallen dann in die Nacht.',
  'action.wait':
    '{about, select, cold {{freeDate, select, none {Warten Sie auf wärmeren Boden: Diese Temperaturen reichen bis zum {lookedToDate}, und bis dahin ist keine spätere Saat zu sehen, die ohne solche Kälte aufgeht.} other {Warten Sie: Eine Saat am {freeDate} liegt, soweit diese Temperaturen zeigen, über {thresholdC}, bis das meiste aufgegangen ist{hoursLeft, plural, =0 {} one {, bis auf eine Stunde} other {, bis auf # Stunden}}.}}} other {{freeDate, select, none {Ob Warten hilft, ist nicht abzusehen: Diese Temperaturen reichen bis zum {lookedToDate}, und bis dahin ist keine spätere Saat zu sehen, die ohne solche Hitze aufgeht.} other {Warten Sie: Eine Saat am {freeDate} trifft, soweit diese Temperaturen zeigen, {hoursLeft, plural, =0 {auf keine solche Hitze} one {nur auf eine solche Stunde} other {nur auf # solche Stunden, wenige davon an einem Tag}}, bis das meiste aufgegangen ist.}}}}',
  'action.start-indoors':
    '{about, select, cold {Ziehen Sie die Saat im Warmen in Töpfen vor, und pflanzen Sie aus, wenn der Boden warm ist; betreiben Sie Heizgeräte nur nach Anleitung.} other {Ziehen Sie die Saat in einer Schale in einem kühlen Raum vor, Tag und Nacht unter {thresholdC}, und pflanzen Sie aus, was das Umsetzen verträgt.}}',
  'action.presprout-cool':
    'Lassen Sie die Saat auf feuchtem Papier kühl ankeimen, bei etwa {fromC} bis {toC}, bis die ersten Wurzelspitzen zu sehen sind, und säen Sie sie abends in feuchten Boden: Angekeimte Saat hält Hitze nicht so leicht auf. Bei gebeiztem Saatgut Handschuhe tragen und das Etikett beachten.',
  'action.presprout-warm':
    'Lassen Sie die Saat auf feuchtem Papier im Warmen ankeimen, bei etwa {fromC} bis {toC}, und säen Sie sie in Boden über {thresholdC}: Kälte schadet am meisten, solange die Saat das erste Wasser aufnimmt. Bei gebeiztem Saatgut Handschuhe tragen und das Etikett beachten.',

  // Sowing windows and frost dates, from src/answers/windows.
  'good-date':
    'Ein Tag ist in einem Jahr gut, wenn binnen {maxDays, plural, one {# Tag} other {# Tagen}} {sharePercent, plural, one {# %} other {# %}} dessen aufgeht, was das Saatgut geben kann, {ifHeldPercent, plural, one {# %} other {# %}} auch ohne Saat, die Hitze oder Kälte zu lange aufhält{frost, select, tender {, und wenn nach dem ersten Sämling {frostFreeDays, plural, one {# Tag} other {# Tage}} lang kein Frost kommt} tender_planted_out {, und wenn nach dem ersten Sämling {frostFreeDays, plural, one {# Tag} other {# Tage}} lang kein Frost kommt; späterer zählt nicht, da die Ernte nicht von der Saat an zählt} half_hardy {, und wenn es nach dem ersten Sämling {frostFreeDays, plural, one {# Tag} other {# Tage}} lang nicht kälter als {frostC} wird} other {}}. Ob sich der Boden bearbeiten lässt, bleibt außen vor.',
  'thin-years':
    '{about, select, plan {{years, plural, one {# Jahr ist} other {# Jahre sind}} wenig: Wie sicher eine Saat ist, lässt sich kaum sagen.} other {{years, plural, one {# Jahr ist} other {# Jahre sind}} wenig: Die Enden der Zeiten können eine Woche danebenliegen.}}',
  'frost-unknown':
    '{about, select, plan {Ohne Lufttemperaturen lässt sich Frost aus dem Boden nicht ablesen: Der Plan beachtet ihn nicht. Senden Sie die täglichen Tiefstwerte der Luft.} other {Ohne Lufttemperaturen ist Frost nicht zu erkennen: Die Zeiten berücksichtigen ihn nicht. Senden Sie die täglichen Tiefstwerte der Luft.}}',
  'frost-hardy': 'Bei einer frostharten Kultur zählt Frost nicht; harter kann jungen Sämlingen trotzdem schaden.',
  'heat-ahead':
    '{isAll, select, yes {In allen vergangenen Jahren} other {In etwa {inYears, plural, one {#} other {#}} von {ofYears, plural, one {# vergangenen Jahr} other {# vergangenen Jahren}}}} kam der Boden über {thresholdC}, bevor eine solche Saat aufgegangen war. Wann, kann so weit voraus niemand sagen: Halten Sie Schatten und Wasser bereit.',
  'why.best-date':
    'Es ist {isEarliest, select, yes {der früheste Tag mit zwei sicheren Wochen ringsum} other {der sicherste Tag}}: Dann gesät, {ofYears, plural, =0 {gehen in einem üblichen Jahr {sharePercent, plural, one {# %} other {# %}} binnen {maxDays, plural, one {# Tag} other {# Tagen}} auf} one {gingen in etwa {inYears, plural, one {#} other {#}} von # Jahr {sharePercent, plural, one {# %} other {# %}} binnen {maxDays, plural, one {# Tag} other {# Tagen}} auf} other {gingen in etwa {inYears, plural, one {#} other {#}} von # Jahren {sharePercent, plural, one {# %} other {# %}} binnen {maxDays, plural, one {# Tag} other {# Tagen}} auf}}{halfDays, select, none {} other {; die Hälfte war nach {halfDays} Tagen da ({halfFromDays} bis {halfToDays})}}.',
  'frost-in-the-air':
    'Gemeint ist Frost an einem Thermometer in der Luft; in einer klaren, windstillen Nacht kann ein Beet einige Grad kälter sein.',
  'frost-left-out':
    'Kein Tag steht da, wo zu wenige Jahre bekannt sind, um ihn zu nennen (für 10 und 90 % braucht es etwa neun mit Frost), oder wo Frost seltener vorkommt.',
  // Cautions about crops, from src/germination.
  'treated-seed':
    'Gebeiztes Saatgut, oft grell gefärbt, trägt ein Pflanzenschutzmittel: Tragen Sie Handschuhe, waschen Sie sich danach, halten Sie es von Kindern, Tieren und Vögeln fern, und essen oder verfüttern Sie es nie. Beachten Sie das Etikett; nach Resten fragen Sie die örtliche Beratung.',
  'cold-wet-soil':
    'In kaltem, nassem Boden liegt die Saat lange und fault oder wird gefressen, ehe sie aufgeht. Warten Sie lieber auf wärmeren Boden, und säen Sie nicht kurz vor kaltem Regen.',
  'short-lived-seed':
    'Das Saatgut hält sich etwa ein Jahr. Kaufen Sie es frisch, oder prüfen Sie einige Samen auf feuchtem Papier, bevor Sie ein älteres Päckchen säen.',
  'beds-take-longer':
    'Die Tabelle zählt Tage etwa so, wie Zwiebelwurzeln erscheinen, nicht Triebe. Im Beet brauchen die Sämlinge vielleicht doppelt so lange; geben Sie die Reihe nicht zu früh auf.',
  'slower-elsewhere':
    'Nach anderen veröffentlichten Zahlen braucht diese Kultur bei {atC} mehr als doppelt so lange. Lassen Sie ihr Zeit.',
  'autumn-slows':
    'Im Spätsommer gesät, wachsen die Pflanzen in kurze, kühle Tage hinein und sind später reif, als die Tage bis zur Ernte sagen: Rechnen Sie etwa zwei Wochen mehr, oder 80 Tage, wo das Päckchen 65 sagt.',
  'weak-lot':
    'Das eine Saatgut hinter der Tabelle war wohl schwach: {crop, select, celery {bei {atC} 40 Sämlinge aus hundert Samen{coolerC, select, none {} other {, zwischen 70 bei {coolerC} und 97 bei {warmerC}}}.} cauliflower {nie mehr als 63 Sämlinge aus hundert Samen, bei {atC}.} eggplant {nie mehr als 60 Sämlinge aus hundert Samen, bei {atC} nur 21.} other {bei {atC} 52 Sämlinge aus hundert Samen, wo in einer anderen Untersuchung fast alle kamen.}} Ein gutes Päckchen kann durchaus mehr bringen.',
  'hot-side-untested':
    'In Boden über {testedToC} hat für die Tabelle niemand die Tage dieser Kultur gezählt. {there, select, quickest {Dort war sie noch am schnellsten; was größere Hitze bewirkt, ist geraten.} best {Dort ging sie am besten auf; was größere Hitze bewirkt, ist geraten.} fewer {Dort kamen {seedlings} Sämlinge aus hundert Samen, gegen {coolerSeedlings} bei {coolerC}; für heißeren Boden ist geraten.} other {Dort kamen noch {seedlings} Sämlinge aus hundert Samen; für heißeren Boden ist geraten.}}',
  'years-to-harvest':
    'Aus Samen gezogene Pflanzen bleiben etwa zwei Jahre ungestochen; ein Erntetag steht deshalb nicht hier.',
  'frost-on-shoots': 'Die Wurzeln überstehen den Winter, doch Frost tötet die jungen Triebe über der Erde.',
  'no-sound-seedlings-hot':
    'Bei {hotC} kam nach 28 Tagen etwas auf, aber kein Sämling war gesund. Diese Tage sind kein Grund zu säen.',
  'seed-cluster':
    'Jeder „Same“ ist eine kleine trockene Frucht mit mehreren Samen; es können also mehr Sämlinge kommen, als Sie gesät haben. Vereinzeln Sie jedes Büschel auf eine Pflanze.',
  crust:
    '{crop, select, carrot {Starker Regen bald nach der Saat kann eine Kruste bilden, die die feinen Sämlinge nicht heben, und war in drei Jahren Versuchssaat eine Hauptursache schlechter Reihen.} other {Starker Regen auf Lehm kann eine Kruste bilden, die Sämlinge nicht heben. Säen Sie flach, und halten Sie die Oberfläche locker.}}',
  'bolts-after-cold':
    '{crop, select, beet {Zwei bis drei Wochen unter {belowC}, wenn die Pflanzen schon mehrere Laubblätter haben, können sie schießen lassen, statt Rüben zu bilden. Eilen Sie nicht mit der ersten Saat.} cabbage {Wochen mit Nächten unter etwa {belowC} können Pflanzen schießen lassen, statt dass sie Köpfe bilden, sobald ihr Stängel bleistiftdick ist. Pflanzen Sie früh kleine aus, keine großen.} carrot {Sehr früh gesät, können einige schießen: Wochen mit Nächten unter etwa {belowC} zählen, sobald die Pflanzen acht Blätter oder mehr haben.} celery {Kälte lässt junge Pflanzen schießen; Wärme bei der Anzucht hielt das zurück. Ersparen Sie ihnen zehn oder mehr Nächte unter etwa {belowC}.} turnip {Wochen mit Nächten unter etwa {belowC} können junge Pflanzen schießen lassen. Eilen Sie nicht mit der ersten Saat.} other {Kälte unter etwa {belowC} lässt Pflanzen schießen, die schon dick sind: ab etwa sieben Blättern, die noch verborgenen mitgezählt, bei einer Frühjahrssorte, ab zehn bei einer Herbstsorte. Steckzwiebeln sind von Anfang an dick: Stecken Sie kleine.}}',
  'onion-rows-stand-in':
    'Das Handbuch kennt keine Winterheckenzwiebel. Tage und Anteile sind die der Zwiebel, einer anderen Art.',
  'white-lisbon-heat':
    'In einem veröffentlichten Versuch mit ‚White Lisbon‘, einer Lauchzwiebel, die eigentlich Allium cepa ist, hörte das Zehntel der Samen, das Hitze am stärksten aufhält, nahe {stoppedC} auf zu keimen.',
  'cold-side-untimed':
    'Bei {coldC} kamen 27 Sämlinge aus hundert Samen, doch wann, hat niemand notiert. Daten für Boden unter {belowC} sind geraten.',
  'keep-moist':
    'Möhrensamen hält an, wenn der Boden um ihn trocknet, und macht weiter, sobald er wieder nass ist. Halten Sie das Beet oben feucht, bis die Reihe aufgegangen ist.',
  'beds-differ':
    'Beete brachten {crop, select, lettuce {nur {fromSeedlings, plural, one {#} other {#}}} other {zwischen {fromSeedlings, plural, one {#} other {#}}}} {crop, select, lettuce {bis {toSeedlings, plural, one {#} other {#}}} other {und {toSeedlings, plural, one {#} other {#}}}} von hundert Sämlingen, die das Labor versprach.',
  'long-heat':
    'Je länger nasse Saat bei {hotC} lag, einen bis vier Tage, desto weniger ging danach bei {afterC} auf. Sorten unterscheiden sich stark.',
  'needs-light':
    'Der Samen braucht Licht zum Keimen, doch kühle Nächte nach warmen Tagen können es ersetzen. Drücken Sie ihn an, bedecken Sie ihn kaum, und lassen Sie ihn nie trocknen.',
  'hates-heat':
    'Gleichmäßige Wärme hält ihn auf: am besten sind {bestFromC} bis {bestToC}, oder Tage mit {dayFromC} bis {dayToC} und Nächte mit {nightFromC} bis {nightToC}. Bei {contraryC} widerspricht sich die Tabelle; wir rechnen das als zu heiß.',
  'no-cold-soil':
    '{crop, select, okra {Bei {coldC} und darunter ging nichts auf, und bei {coolC} dauerte es 27 Tage. Am schnellsten ist sie bei {bestFromC} bis {bestToC}.} other {Bei {coldC} und darunter ging nichts auf; bei {coolC} dauerte es 13 Tage, bei {bestFromC} nur 4. Warten Sie auf warmen Boden.}}',
  'cold-side-untested':
    'In Boden unter {belowC} hat für die Tabelle niemand diese Kultur geprüft{crop, select, muskmelon {, und dort kamen nur 38 Sämlinge aus hundert Samen. Warten Sie auf warmen Boden.} other {. Für kälteren Boden ist geraten; ziehen Sie sie im Warmen vor.}}',
  'stopped-by-heat':
    'Heißer Boden hält die Saat auf: 99 Sämlinge aus hundert Samen bei {goodC}, 12 bei {hotC}. Sorten unterscheiden sich: Bei 22 von ihnen lag die Grenze zwischen {limitFromC} und {limitToC}.',
  'sleeps-after-heat':
    'Von Hitze aufgehaltene Saat keimt oft, wenn der Boden abkühlt, doch lange Hitze kann sie in eine Ruhe versetzen, die Kühle allein nicht beendet. Säen Sie abends, beschatten Sie die Reihe, und halten Sie sie nass.',
  'some-need-light':
    'Manche Sorten brauchen Licht zum Keimen, und eine, die es nicht brauchte, brauchte es, nachdem sie bei {hotC} nass gelegen hatte. Bedecken Sie die Saat dünn.',
  'bolts-in-heat-and-long-days':
    'Hitze, lange Tage und Trockenheit lassen die Pflanzen schießen, und die Blätter werden bitter. Ab dem späten Frühjahr nehmen Sie am besten eine schossfeste Sorte, beschattet und nie trocken.',
  'cold-first-day':
    '{crop, select, lima_bean {Kälte kann der Saat dauerhaft schaden, solange sie trocken das erste Wasser aufnimmt; Kälte, nachdem sie im Warmen getrunken hatte, tat es nicht. Warten Sie auf {waitForC} Boden oder mehr.} snap_bean {Sehr trockene Saat nimmt beim Quellen Schaden, in kaltem Wasser leichter. Warten Sie auf {waitForC} Boden oder mehr.} other {Boden unter {belowC} am ersten oder zweiten Tag nach der Saat kann ihr dauerhaft schaden. Warten Sie auf {waitForC}, bei zuckerreichen und extrasüßen Sorten auf {sugaryFromC} bis {sugaryToC}.}}',
  'heat-thins':
    '{crop, select, lima_bean {Hitze lichtet die Reihe eher, als dass sie sie verzögert: 88 Sämlinge aus hundert Samen bei {goodC}, aber 2 bei {hotC}.} snap_bean {Hitze lichtet die Reihe eher, als dass sie sie verzögert: 97 Sämlinge aus hundert Samen bei {goodC}, aber 47 bei {hotC}, und genauso bald.} other {Starke Hitze lichtet die Reihe: 83 Sämlinge aus hundert Samen bei {goodC}, 46 bei {hotC}.}}',
  'hard-seed':
    'Ein Teil der Samen hat eine Schale, die kein Wasser einlässt, in einer Untersuchung bis zu 24 von hundert. Weichen Sie sie über Nacht in lauwarmem Wasser ein, und säen Sie sofort; gebeiztes Saatgut nie einweichen.',
  'day-length':
    'Zwiebeln bilden sich, sobald der Tag für die Sorte lang genug ist: 11 bis 13 Stunden bei Kurztagszwiebeln, 13 bis 14 bei mittleren, 14 und mehr bei Langtagszwiebeln, die jenseits von etwa 35° Breite passen. Säen Sie früh: Kleine Pflanzen machen kleine Zwiebeln.',
  soak: 'Samen, die vor der Saat 12 bis 36 Stunden in Wasser lagen, gingen zahlreicher auf. Gebeiztes Saatgut nicht einweichen.',
  'cool-soil': 'Sie mag kühlen Boden: 89 Sämlinge aus hundert Samen bei {goodC}, 51 bei {warmC}, 1 bei {hotC}.',
  'wet-soil-rot':
    'Erbsensaat erträgt Kälte, fault aber in nassem Boden, Markerbsen mehr als Palerbsen. Säen Sie in durchlässigen Boden, und weichen Sie die Saat nicht in kaltem Wasser ein.',
  'wants-warmth':
    '{crop, select, tomato {Die Hälfte war bei {bestFromC} bis {bestToC} nach 6 Tagen aufgegangen, bei {coolC} nach 14 und bei {coldC} nach 43; bei {nothingC} kam nichts. Wo das Frühjahr kalt ist, ziehen Sie sie im Haus vor.} other {Die Hälfte war bei {bestFromC} bis {bestToC} nach 8 Tagen aufgegangen, bei {coolC} aber erst nach 25, und bei {coldC} kam kaum etwas. Ziehen Sie sie im Warmen vor.}}',
  'cold-thins':
    'Kalter Boden lichtet die Reihe: 42 Sämlinge aus hundert Samen bei {coldC}, 76 bei {coolC}, 97 bei {mildC}.',
  'careful-above-20':
    'Über {aboveC} beginnt Hitze, die Saat aufzuhalten, und bei {stoppedC} hielt sie alle auf; kühle Nächte helfen. Vieles davon kann noch keimen, wenn der Boden abkühlt.',
  'not-too-wet':
    'In auch nur etwas zu nassem Boden wird die Samenschale schleimig und lässt keine Luft ein. Halten Sie das Beet feucht, nicht nass.',
  'bolts-in-long-days':
    'Tage von 12 bis 15 Stunden lassen die Pflanzen je nach Sorte schießen, und Wärme beschleunigt es; dann ist es mit den Blättern vorbei. Säen Sie früh im Jahr oder zum Ende des Sommers.',
  'whole-days':
    'Die Tabelle zählt ganze Tage, und in warmem Boden steht da 1: Das kann ein halber oder anderthalb Tage sein. Lesen Sie es als „sehr schnell“, nicht auf die Stunde.',
  'cool-and-light':
    'In Boden von {coolC} oder weniger hielt Licht die Saat einer Sorte zurück; decken Sie sie gut ab. In derselben Untersuchung schadeten zehn nasse Tage bei {coldC} nicht: Unsere Warnung vor Kälte ist vorsichtig.',
  'seedless-kinds':
    'Saat kernloser Sorten keimt schlecht. Säen Sie sie im Haus in warme Erde, die feucht ist, aber nie nass.',

  // Names of crops within a sentence.
  'crop.asparagus': 'Spargel',
  'crop.beet': 'Rote Bete',
  'crop.bunching-onion': 'Winterheckenzwiebel',
  'crop.cabbage': 'Kopfkohl',
  'crop.carrot': 'Möhre',
  'crop.cauliflower': 'Blumenkohl',
  'crop.celery': 'Stangensellerie',
  'crop.cucumber': 'Gurke',
  'crop.eggplant': 'Aubergine',
  'crop.lettuce': 'Pflücksalat',
  'crop.head-lettuce': 'Kopfsalat',
  'crop.lima-bean': 'Limabohne',
  'crop.muskmelon': 'Zuckermelone',
  'crop.okra': 'Okra',
  'crop.onion': 'Zwiebel',
  'crop.parsley': 'Petersilie',
  'crop.parsnip': 'Pastinake',
  'crop.pea': 'Erbse',
  'crop.pepper': 'Paprika',
  'crop.radish': 'Radieschen',
  'crop.snap-bean': 'Buschbohne',
  'crop.spinach': 'Spinat',
  'crop.sweet-corn': 'Zuckermais',
  'crop.tomato': 'Tomate',
  'crop.turnip': 'Speiserübe',
  'crop.watermelon': 'Wassermelone',
  'crop.own-rows': 'eigene Kultur',
  // Pictures, from src/plot.
  'picture.sown': '{crop}, gesät am {on}{bed, select, none {} other {, {bed}}}',
  'picture.half-up':
    'Die Hälfte {tense, select, was {war} other {ist}} etwa am {on} aufgegangen{range, select, span {, zwischen {from} und {to}} open {, vom {from} bis nach der Zählung} other {}}. {seeds, select, none {Aus hundert Samen} other {Aus {seeds} Samen}} {tense, select, was {waren} other {sind}} {fromSeedlings, plural, one {#} other {#}} bis {toSeedlings, plural, one {# Sämling} other {# Sämlinge}} zu erwarten.',
  'picture.none-up':
    '{reason, select, not_at_this_temperature {Bei diesen Temperaturen geht nichts auf.} other {Bis zur Zählung am {by} ist nichts aufgegangen.}}',
  'picture.event':
    '{event, select, first {Das erste Zehntel} half {Die Hälfte} other {Neun Zehntel}} {on}{range, select, span {, zwischen {from} und {to}} open {, vom {from} bis nach der Zählung} other {}}{slowTo, select, none {} other {; in langsamen Beeten bis {slowTo}}}',
  'picture.no-event':
    '{event, select, first {Das erste Zehntel} half {Die Hälfte} other {Neun Zehntel}}: {reason, select, not_by_count_day {nicht bis zur Zählung am {by}} other {nicht bei diesen Temperaturen}}',
  'picture.spell': '{kind, select, hot {heiß {dates}, bis {peak}} other {kalt {dates}, bis {peak}}}',
  'picture.part':
    '{part, select, measured {gemessen} modelled {berechnet} other {erwartet}}{dates, select, none {} other { {dates}}}',
  'picture.temperature': 'Die Temperatur an der Saat beträgt {from} bis {to}.',
  'picture.no-temperature': 'An der Saat ist keine Temperatur bekannt.',
  'picture.likes': 'Die Kultur mag {from} bis {to}.',
  'picture.at-seed':
    'Temperatur an der Saat in {depthCm} Tiefe{from, select, none {} other {; grün: was sie mag, {from} bis {to, select, none {} other {{to}}}}}',
  'picture.today': 'Heute ist der {on}.',
  'picture.count': 'Gezählt wird am {on}.',
  'picture.day': '{day, select, sown {gesät} today {heute} count {Zählung} other {am besten}} {on}',
  'picture.seedlings-up':
    'Aufgegangen, von hundert Samen, wie im Labor; Beete bringen {fromSeedlings, plural, one {#} other {#}} bis {toSeedlings, plural, one {#} other {#}}',
  'picture.when-to-sow': 'Wann säen: {crop}{bed, select, none {} other {, {bed}}}',
  'picture.season': 'Säen: {dates}{bestDate, select, none {} other {; am besten am {bestDate}}}.',
  'picture.no-season': 'Kein Tag dieser Saison ist sicher genug.',
  'picture.odds':
    '{years, plural, =0 {Nach einem üblichen Jahr beurteilt: Wie oft ein Tag misslingt, ist nicht bekannt} one {In wie vielen von # Jahr jeder Tag gut war; gestrichelt: {surenessPercent, plural, one {# %} other {# %}}, so sicher wie gewünscht} other {In wie vielen von # Jahren jeder Tag gut war; gestrichelt: {surenessPercent, plural, one {# %} other {# %}}, so sicher wie gewünscht}}',
  'picture.open': '{dates, select, none {offen zum Säen} other {offen {dates}}}',
  'picture.closed':
    '{reason, select, too_cold {zu kalt} too_hot {zu heiß} too_slow {zu langsam} too_late {zu spät} other {Frost kommt noch}}{dates, select, none {} other { {dates}}}',
  'picture.closed-dates':
    'Geschlossen, {reason, select, too_cold {zu kalt} too_hot {zu heiß} too_slow {zu langsam} too_late {zu spät} other {Frost kommt noch}}: {dates}.',
  'picture.more': '{more, plural, one {# weitere} other {# weitere}}',
  'picture.best': 'bester Tag',
  'picture.lane':
    '{name}: {dates, select, none {kein Tag ist sicher genug.} other {offen {dates}{bestDate, select, none {} other {, am besten am {bestDate}}}.}}',
  'picture.crop': '{crop}{latinName, select, none {} other { ({latinName})}}',
  'picture.curve':
    '{from, select, none {{fastest, select, none {Für keine Temperatur, bei der etwas aufgeht, sind Tage gezählt.} other {Am schnellsten geht sie bei {fastest} auf, in {days} Tagen.}}} other {Sie mag Boden von {from} bis {to} (grün){fastest, select, none {} other { und geht am schnellsten bei {fastest} auf, in {days} Tagen}}.}}',
  'picture.days-to-half': 'Tage, bis die Hälfte von dem, was kommt, aufgegangen ist',
  'picture.seedlings': 'Sämlinge aus hundert Samen',
  'picture.value-at': '{value} bei {at}',
  'picture.days-at': 'Tage, bis die Hälfte aufgegangen ist: {values}.',
  'picture.seedlings-at': 'Sämlinge aus hundert Samen: {values}.',
  'picture.cell':
    '{cell, select, timed {geprüft} none_came {geprüft, nichts kam} other {nie geprüft}}{at, select, none {} other {: {at}.}}',
  'picture.limit': '{limit, select, minimum {mindestens {at}} maximum {höchstens {at}} other {Hitze hält auf ab {at}}}',

  // basics: refusals of every kind
  'not-understood.request': 'Die Anfrage ist so nicht brauchbar.',
  'not-understood.field': 'Die Anfrage',
  'not-understood.more':
    '({isAtLeast, select, yes {mindestens {more, number}} other {{more, number}}} weitere{shown, select, none {} other {; die ersten {shown} stehen}} unter "errors")',
  'not-worked-out': 'Das wurde jetzt nicht berechnet.',

  // readings: warnings of a series
  'two-values-at-once':
    'Zu {instants, plural, one {# Zeitpunkt} other {# Zeitpunkten}} kamen zwei verschiedene Werte; es gilt ihr Mittel. Prüfen Sie, ob in der Reihe zwei Thermometer oder eine verstellte Uhr vermischt sind.',
  'unit-doubtful':
    'In {unit, select, C {°C} F {°F} other {K}} gelesen ist der Boden im Mittel {meanC} warm; das ist selten. Sind es {otherUnit, select, C {°C} F {°F} other {K}}, ist das Mittel {otherMeanC}: dann "unit": "{otherUnit}" senden.',
  'unit-against-header':
    'Die Spalte „{column}“ nennt {headerUnit, select, C {°C} F {°F} other {K}}, gelesen wurde sie wie gewünscht in {unit, select, C {°C} F {°F} other {K}}. Ist die Kopfzeile falsch, berichtigen Sie sie in der Datei.',
  'extremes-for-readings':
    'Die Spalte „{column}“ enthält wohl den {statistic, select, min {tiefsten} other {höchsten}} Wert jedes Abschnitts statt seines Mittels; sie gilt, wie sie ist.',
  'skipped-hour':
    '{rows, plural, one {# Zeile liegt} other {# Zeilen liegen}} in einer Stunde, die die Uhren am Ort überspringen, und {rows, plural, one {fehlt} other {fehlen}} deshalb. Wird die Uhr des Loggers nicht umgestellt, clock=standard senden.',

  // readings: reasons why a row was dropped or is doubtful; each continues the row's value
  'row.no-stamp': 'enthält kein Datum mit Uhrzeit',
  'row.unexpected-offset': 'hat einen Abstand zu UTC, die anderen haben keinen',
  'row.no-offset': 'hat keinen Abstand zu UTC, die anderen haben einen',
  'row.other-width': 'hat {cells, plural, one {# Zelle} other {# Zellen}}, die anderen haben {usualCells, number}',
  'row.marked-bad': 'ist in der Aufzeichnung als zweifelhaft oder falsch vermerkt',
  'row.too-short': 'endet vor der Spalte der Temperaturen',
  'row.empty': 'enthält keinen Wert',
  'row.says-missing': 'sagt, dass kein Wert da ist',
  'row.missing-mark': 'steht für „kein Wert“',
  'row.no-number': 'ist keine Zahl',
  'row.cut-off': 'steht in einer letzten Zeile, die abgeschnitten ist',
  'row.no-such-date': 'steht an einem Tag, den es nicht gibt',
  'row.no-such-hour': 'steht in der Stunde, die die Uhren überspringen',
  'row.lost-clock': 'stammt von einer Uhr, die ihr Datum verloren hatte',
  'row.no-temperature': 'ist keine Temperatur von Boden oder Luft',
  'row.same-date': 'kommt nach einem anderen desselben Tages; der erste gilt',
  'row.half-a-day': 'hat kein {lacks, select, min {Minimum} other {Maximum}} zum anderen Wert',
  'row.min-above-max': 'hat ein Minimum über dem Maximum',
  'row.too-cold': 'ist kälter als alles, was dieses Thermometer erlebt haben kann',
  'row.too-hot': 'ist heißer als alles, was dieses Thermometer erlebt haben kann',
  'row.power-on': 'antwortet ein Fühler, der eben erst eingeschaltet wurde',
  'row.no-answer': 'steht für einen Fühler, der nicht antwortet: ein loses oder gebrochenes Kabel',
  'row.failed-zero': 'ist eine Null zwischen ganz anderen Werten: Der Fühler hat nichts gemessen',
  'row.spike':
    'weicht von den Nachbarwerten um {bound, select, over {mehr als {spikeK}} under {weniger als {spikeK}} other {{spikeK}}} ab',
  'row.jump':
    'folgt auf einen Sprung von {bound, select, over {mehr als {jumpK}} under {weniger als {jumpK}} other {{jumpK}}}',
  'row.stuck':
    'hat sich {bound, select, over {mehr als } under {weniger als } other {}}{days, plural, one {# Tag} other {# Tage}} lang nicht geändert',

  // readings: refusals
  'series.no-stamp':
    '"{at}" ist kein Zeitpunkt. Schreiben Sie ihn wie 2027-08-03T14:30:00-02:00, in den Jahren 1900 bis 2199.',
  'series.out-of-range':
    '{value} {unit, select, C {°C} F {°F} other {K}} ist keine Temperatur von Boden oder Luft.{maybeUnits, select, none {} other { Ist die Einheit {maybeUnits}?}} Das Zeichen eines Thermometers für „kein Wert“ bitte weglassen.',
  'series.no-mean': '{date} braucht einen Mittelwert, oder Minimum und Maximum.',
  'series.half-a-day': '{date} hat nur ein Minimum oder nur ein Maximum: Senden Sie beide, oder den Mittelwert allein.',
  'series.not-rising':
    'Am {date} steigen Minimum, Mittelwert und Maximum nicht an; prüfen Sie, ob Spalten vertauscht sind.',
  'series.same-date': '{date} kommt zweimal mit verschiedenen Temperaturen; behalten Sie die richtige.',
  'time-zone-needed.stamp':
    '"{at}" nennt keinen Abstand zu UTC. Fügen Sie ihn an, wie in {at}-02:00, oder senden Sie where.place.timeZone.',
  'time-zone-needed.days':
    'Irgendwo beginnen die Tage um Mitternacht: Senden Sie where.place.timeZone, zum Beispiel "Etc/GMT+2".',
  'time-zone-needed.days.field': 'Eine Reihe von Tagen braucht die Zeitzone des Ortes, einen IANA-Namen.',
  'time-zone-needed.file':
    'Die Zeitstempel haben keinen Abstand zu UTC, und die Datei nennt keine Zeitzone. Senden Sie timeZone, zum Beispiel timeZone=Etc/GMT%2B2.',
  'time-zone-needed.file.field': 'Zeitstempel ohne Abstand zu UTC brauchen die Zeitzone des Ortes.',
  'too-few-readings.no-whole-day':
    'Kein Tag der Reihe ist vollständig; senden Sie mehr von jedem Tag, oder die Messwerte selbst.',
  'not-csv.packed':
    'Die Datei ist {kind, select, zip {ein Zip-Archiv oder eine Tabellenkalkulation} gzip {ein Gzip-Archiv} bzip2 {ein Bzip2-Archiv} xz {ein Xz-Archiv} 7z {ein 7z-Archiv} rar {ein Rar-Archiv} spreadsheet {eine Tabellenkalkulation} pdf {ein PDF} database {eine Datenbank} other {ein Bild}}, kein Text. Entpacken Sie sie, oder exportieren Sie sie als CSV, und senden Sie das.',
  'not-csv.not-text': 'Die Datei ist kein Text. Exportieren Sie die Messwerte als CSV, und senden Sie das.',
  'not-csv.empty': 'Die Datei ist leer. Senden Sie die Zeilen mit Messwerten unter einer Kopfzeile.',
  'not-csv.web-page':
    'Die Datei ist eine Webseite, keine Tabelle von Messwerten. Exportieren Sie die Messwerte als CSV.',
  'not-csv.json':
    'Die Datei ist JSON. Senden Sie sie mit Content-Type: application/json in der Form, die /docs zeigt, oder exportieren Sie sie als CSV.',
  'not-csv.no-table':
    'In der Datei ist keine Tabelle von Messwerten. Senden Sie Zeilen mit Datum und Uhrzeit in einer Spalte und der Temperatur in einer anderen, getrennt durch Kommas, Semikolons, Tabulatoren oder Leerzeichen, unter einer Zeile mit den Namen der Spalten.',
  'not-csv.many-columns':
    'Die Datei hat {columns, number} Spalten; höchstens {maxColumns, number} gehen. Senden Sie die Spalten mit Zeitstempel und Temperatur.',
  'not-csv.long-line':
    'Zeile {line} ist länger als eine Million Zeichen. Ist die Datei Text, mit einer Messung je Zeile?',
  'not-csv.long-line.field': 'Die Zeile hat kein Ende.',
  'no-readings.no-rows': 'Die Datei hat keine Zeilen unter der Kopfzeile. Senden Sie die Messwerte mit.',
  'no-readings.no-rows.field': 'Unter der Kopfzeile stehen keine Zeilen.',
  'no-readings.no-usable-row':
    'Keine Zeile der Datei hat Zeitstempel und Temperatur zugleich.{line, select, none {} other { Zeile {line} ("{value}") ist die erste, die wegfiel: "errors" sagt, warum.}}',
  'no-readings.several-a-day':
    'Die Datei hat mehrere Zeilen je Datum, aber keine Spalte mit der Uhrzeit. Schreiben Sie Datum und Uhrzeit jeder Zeile in eine Spalte, wie in 2027-08-03 14:30.',
  'no-readings.several-a-day.field': 'Dieselben Daten kommen immer wieder, ohne Uhrzeit.',
  'no-readings.half-days':
    'Die Datei enthält von jedem Tag {has, select, min {das Minimum und kein Maximum} other {das Maximum und kein Minimum}}. Ein Tag braucht beide, oder seinen Mittelwert: Senden Sie eine Datei mit beiden nebeneinander.',
  'no-readings.half-days.field': 'Die Spalte „{column}“ allein gälte als Mittelwert des Tages.',
  'no-readings.no-temperatures':
    'Die Spalte „{column}“ enthält keine Temperaturen. Senden Sie column= mit Nummer oder Namen einer anderen.',
  'no-readings.no-temperatures.field': 'Die Werte sind keine Temperaturen in °C, °F oder K.',
  'no-readings.no-temperature-column': 'Keine Spalte enthält Zahlen, die Temperaturen sein könnten.',
  'no-readings.no-numbers': 'Die Spalte „{column}“ enthält keine Zahlen, also keine Temperaturen.',
  'no-readings.no-numbers.field': 'Nennen Sie eine Spalte mit Zahlen.',
  'no-readings.no-dates': 'Die Spalte „{column}“ enthält weder Datum noch Uhrzeit.',
  'no-readings.no-dates.field': 'Nennen Sie eine Spalte mit Daten.',
  'no-readings.no-date-column': 'Keine Spalte enthält Datum und Uhrzeit wie 2027-08-03 14:30.',
  'no-readings.times-of-day':
    'Die Spalte „{column}“ enthält Uhrzeiten ohne Datum. Fügen Sie jeder Zeile das Datum hinzu.',
  'no-readings.times-of-day.field': 'Uhrzeiten allein sagen nicht, welcher Tag es ist.',
  'no-readings.counter':
    'Die Spalte „{column}“ zählt ab dem Start des Loggers, und die Datei sagt nicht, wann das war. Schreiben Sie Datum und Uhrzeit in jede Zeile, oder senden Sie die Messwerte als JSON mit Zeitstempeln.',
  'no-readings.counter.field': 'Ein Zähler nennt kein Datum.',
  'no-readings.columns': 'Die Spalten heißen {columns}.',
  'not-understood.no-such-column': 'Die Datei hat keine Spalte „{column}“.',
  'not-understood.no-such-column.field':
    'Senden Sie eine Zahl von 1 bis {count, number}, oder einen der Namen {columns}.',
  'not-understood.no-such-block': 'Die Datei hat weder eine Spalte noch einen Block von Zeilen namens „{column}“.',
  'not-understood.no-such-block.field': 'Nennen Sie {blocks} oder eine Spalte.',

  // readings: questions about a file
  'choose-unit.too-hot':
    'Das Mittel der Reihe wäre {meanC}, heißer, als Boden bleibt. Sind es Grad Fahrenheit, "unit": "F" senden.',
  'choose-unit.unsaid': 'Die Datei sagt nicht, ob die Spalte „{column}“ in °C, °F oder K ist.',
  'choose-unit.contradicts': 'Was die Datei zur Einheit der Spalte „{column}“ sagt, widerspricht sich oder den Werten.',
  'choose-unit.send': 'Senden Sie {ways}.',
  'choose-unit.mean.reads': '{unit, select, C {Grad Celsius} F {Grad Fahrenheit} other {Kelvin}}',
  'choose-unit.mean.consequence': 'das Mittel ist {meanC}',
  'choose-unit.choice.reads': '{unit, select, C {Grad Celsius} F {Grad Fahrenheit} other {Kelvin}}',
  'choose-unit.choice.consequence': 'Minimum {minC}, Mittel {meanC}, Maximum {maxC}',
  'choose-medium':
    'Weder die Spalte „{column}“ noch die Anfrage sagt, ob das Thermometer im Boden oder in der Luft war.',
  'choose-medium.send': 'Senden Sie medium=soil für den Boden oder medium=air für die Luft.',
  'choose-medium.choice.reads': '{medium, select, soil {ein Fühler im Boden} other {ein Thermometer in der Luft}}',
  'choose-medium.choice.consequence':
    'die Werte gelten als {medium, select, soil {Bodentemperaturen} other {Lufttemperaturen}}',
  'choose-column.late': 'Weiter unten stehen Zeilen von Fühlern, die in den ersten Zeilen fehlen.',
  'choose-column.unsure': 'Keine Spalte enthält sicher die gewünschten Temperaturen.',
  'choose-column.unnamed':
    'Keine Spalte heißt wie {medium, select, soil {eine Bodentemperatur} air {eine Lufttemperatur} other {eine Temperatur}}{depthCm, select, none {} other { in {depthCm} Tiefe}}.',
  'choose-column.several': 'Mehr als eine Spalte passt.',
  'choose-column.several-sensors': 'Die Zeilen dieser Spalte stammen von mehreren Fühlern.',
  'choose-column.several-times': 'Mehr als eine Spalte enthält Datum und Uhrzeit.',
  'choose-column.several-blocks':
    'Die Datei enthält mehrere Blöcke von Zeilen über dieselbe Zeit, jeden unter einem eigenen Titel.',
  'choose-column.send': 'Sagen Sie mit {parameter}, welche gemeint ist.',
  'choose-column.choice.reads':
    '{name, select, none {Spalte {column}} other {{name}}}{lure, select, nothing {} humidity {, Luftfeuchte} soilMoisture {, Bodenfeuchte} battery {, Batterie} dewPoint {, Taupunkt} wind {, Wind} feltTemperature {, gefühlte Temperatur} wetBulb {, Feuchtkugel} logger {, der Logger selbst} indoorTemperature {, Innentemperatur} pressure {, Luftdruck} position {, Lage} degreeDays {, Gradtage} rainOrLight {, Regen oder Licht} alarmLimit {, eine Alarmgrenze} qualityMark {, ein Gütezeichen} spread {, Streuung} counter {, ein Zähler} signal {, Funksignal} gas {, Gas} other {, eine andere Größe}}{medium, select, soil {, Bodentemperatur} air {, Lufttemperatur} other {}}{depthCm, select, none {} other {, {depthCm} tief}}{unit, select, C {, in °C} F {, in °F} K {, in K} other {}}{isAgainst, select, yes {, nicht {medium, select, soil {Luft} other {Boden}}} other {}}',
  'choose-column.choice.consequence':
    '{label, select, none {Spalte {column}} other {die Reihe „{label}“}} gilt, {min, select, none {leer} other {{max, select, none {leer} other {von {min} bis {max}}}}} in den ersten Zeilen',
  'choose-column.time.reads': '{name, select, none {Spalte {column}} other {{name}}}',
  'choose-column.time.consequence': 'die Zeilen beginnen bei "{firstCell}"',
  'choose-column.block.reads': '„{title}“',
  'choose-column.block.consequence':
    '{rows, plural, one {die # Zeile ab Zeile {line} gilt} other {die # Zeilen ab Zeile {line} gelten}}',
  'choose-date-order.unproved': 'Aus den Daten geht nicht hervor, ob Tag oder Monat zuerst kommt.',
  'choose-date-order.several-offsets':
    'Die Zeitstempel haben verschiedene Abstände zu UTC, und es ist nicht klar, ob Tag oder Monat zuerst kommt.',
  'choose-date-order.send': 'Senden Sie {ways}.',
  'choose-date-order.choice.reads':
    '{dateOrder, select, dmy {Tag vor Monat} mdy {Monat vor Tag} ymd {Jahr, Monat, Tag} other {Jahr, Tag, Monat}}',
  'choose-date-order.choice.consequence':
    '{from, select, none {jedes Datum wird so gelesen} other {{to, select, none {jedes Datum wird so gelesen} other {die Messwerte reichen vom {from} bis zum {to}}}}}',
  'choose-clock.steady':
    'Die Zeitstempel laufen ohne Sprung weiter, wo die Uhren von {timeZone} umgestellt werden, etwa am {changedOn}: Die Uhr des Loggers wird wohl nicht umgestellt.',
  'choose-clock.send': 'Senden Sie clock=standard, clock=utc oder, wenn sie doch umgestellt wird, clock=local.',
  'choose-clock.choice.reads':
    '{clock, select, standard {das ganze Jahr Normalzeit} utc {das ganze Jahr UTC} other {im Frühjahr und Herbst umgestellt}}',
  'choose-clock.choice.consequence':
    'der erste Messwert ist von {firstAt}{clock, select, local {; Zeilen in einer übersprungenen Stunde fallen weg} other {}}',
  'choose-decimal-mark.torn':
    'Die Zeilen haben eine Zelle mehr, als es Namen gibt: "{cells}" kann eine Zahl sein oder zwei.',
  'choose-decimal-mark.send': 'Senden Sie decimalMark=, oder decimalMark=. dazu.',
  'choose-decimal-mark.choice.reads':
    '{decimalMark, select, comma {ein Dezimalkomma} other {das Komma trennt zwei Zellen}}',
  'choose-decimal-mark.choice.consequence':
    'es ist die Zahl {number}{decimalMark, select, comma {} other {, und eine Spalte ohne Namen}}',

  // basics: faults of a field
  'field.unknown': 'ist hier kein bekanntes Feld; prüfen Sie die Schreibweise, oder lassen Sie es weg',
  'field.wrong-kind': `${MISSING}muss {expected, select, text {ein Text} number {eine Zahl} wholeNumber {eine ganze Zahl} trueOrFalse {true oder false} list {eine Liste} object {ein Objekt} other {etwas anderes}}{orExpected, select, nothing {} text { oder ein Text} number { oder eine Zahl} wholeNumber { oder eine ganze Zahl} trueOrFalse { oder true oder false} list { oder eine Liste} object { oder ein Objekt} other { oder etwas anderes}} sein${WAS}`,
  'field.at-least': `${MISSING}muss {of, select, entries {mindestens {limit, plural, one {einen Eintrag} other {# Einträge}} haben} characters {mindestens {limit, plural, one {ein Zeichen} other {# Zeichen}} haben} other {mindestens {limit} sein}}${WAS}`,
  'field.at-most': `${MISSING}darf {of, select, entries {höchstens {limit, plural, one {einen Eintrag} other {# Einträge}} haben} characters {höchstens {limit, plural, one {ein Zeichen} other {# Zeichen}} haben} other {höchstens {limit} sein}}${WAS}`,
  'field.one-of': `${MISSING}muss {isSeveral, select, yes {eines von } other {}}{values} sein${WAS}`,
  'field.date': `${MISSING}muss ein Datum wie 2027-08-03 sein, ein Tag des Kalenders in den Jahren 1900 bis 2199${WAS}`,
  'field.clock-time': `${MISSING}muss eine Uhrzeit wie 18:00 sein${WAS}`,
  'field.instant': `${MISSING}muss ein Zeitpunkt wie 2027-08-03T14:30:00-02:00 sein; ein + darin wird %2B geschrieben${WAS}`,
  'field.id': `${MISSING}muss aus 1 bis 64 Zeichen von a-z, 0-9 und - bestehen${WAS}`,
  'field.time-zone': `${MISSING}muss eine IANA-Zeitzone wie "Etc/GMT+2" oder "Europe/Berlin" sein${WAS}`,
  'field.plain-text': `${MISSING}muss einfacher Text ohne Steuerzeichen sein${WAS}`,
  'field.no-spaces': `${MISSING}darf keine Leerzeichen oder Steuerzeichen enthalten${WAS}`,
  'field.crop': `${MISSING}muss die Id einer Kultur aus GET /v1/crops sein, etwa lettuce, oder in JSON ein Objekt mit eigenen Zeilen${WAS}`,
  'field.air-temperature': `${MISSING}muss eine Temperatur sein, die Luft haben kann, in °C${WAS}`,
  'field.min-above-max': `${MISSING}darf nicht über dem mittleren Maximum des Monats liegen, {meanMaxC}${WAS}`,
  'field.once-each': 'darf jedes nur einmal nennen',
  'field.from-above-to': 'darf kein from haben, das über to liegt',
  'field.before-from': `${MISSING}darf nicht vor from liegen, {from}${WAS}`,
  'field.within-a-year': `${MISSING}muss innerhalb eines Jahres nach from liegen${WAS}`,
  'field.no-series': 'muss mindestens eine Reihe haben',
  'field.daily-or-readings': 'braucht entweder "daily" oder "readings", nicht beide',
  'field.room-needed': 'fehlt für ein Beet im Haus: Wie warm ist der Raum?',
  'field.wetted-on-needed': 'fehlt für ein trockenes Beet: An welchem Tag wird es gegossen?',
  'field.only-dry': 'gilt nur zusammen mit "moisture": "dry"',
  'field.bed-beside-place':
    'muss neben einem Ort ein Objekt sein; eine Id nennt ein gespeichertes Beet, das seinen Ort schon hat',
  'field.place-needed': 'fehlt; ein beschriebenes Beet braucht seinen Ort',
  'field.place-or-bed-needed': 'muss einen Ort haben, oder die Id eines gespeicherten Beets',
  'field.crops-needed': 'fehlt für window-open: Welche Kulturen warten auf die Saat?',
  'field.more-than-sown': `${MISSING}darf nicht mehr sein als sown${WAS}`,
  'field.beside-test': 'entfällt, wo ein Test gesendet wird: Der Test sagt mehr',
  'field.soil-not-rising': 'muss von minimumC über optimumFromC und optimumToC bis maximumC steigen',
  'field.rows-at-once': 'Zwei Zeilen gelten für {atC}; behalten Sie eine Zeile je Temperatur.',
  'field.rows-without-days':
    'Eine Kurve braucht Tage bei zwei oder mehr Temperaturen; geben Sie "days" an, wo Saat aufging.',
  'field.rows-without-percent':
    'Keine Zeile hat mehr als 0 Prozent, es ginge also nie etwas auf; geben Sie "percent" an, wo Saat aufging, oder lassen Sie alle null.',
  'field.unknown-parameter':
    'ist hier kein bekannter Parameter; {meant, select, none {/docs nennt alle} other {meinten Sie {meant}?}}',
  'field.goes-into-body':
    'gehört in den Inhalt, wenn die Frage JSON ist; die Adresse sagt nur, wie die Antwort geschrieben wird, etwa mit precision',
  'field.not-beside-json':
    'ist hier kein bekannter Parameter; neben einer Frage in JSON sagt die Adresse nur, wie die Antwort geschrieben wird, etwa mit precision',
  'field.missing-or-near': 'fehlt; senden Sie es, oder den Namen eines Ortes als „near“',
  'field.bed-or-place':
    'muss allein stehen: Nennen Sie ein Beet, einen Platz, einen Ort (near) oder Koordinaten, und nur eines davon',
  'field.sent-twice': 'steht zweimal da; senden Sie es einmal',
  'field.contradicts': 'widerspricht einem anderen Parameter; senden Sie einen von beiden',
  'field.path-id': 'im Pfad muss aus 1 bis 64 Zeichen von a-z, 0-9 und - bestehen',
  'field.path-date': 'im Pfad muss ein Datum wie 2027-08-03 sein',
  'field.date-needed': 'fehlt: Es wurden keine Temperaturen gesendet, aus denen es hervorginge',
  'field.from-needed': 'fehlt, zusammen mit to: Gespeichertes beginnt am {firstDate}, nach dem {to}',
  'field.many-days':
    'darf {step, select, hour {bei Stunden} other {bei Tagen}} höchstens {maxDays, plural, one {# Tag} other {# Tage}} nach from liegen; fragen Sie nach einer kürzeren Zeit',
  'field.before-first': 'darf nicht vor dem {firstDate} liegen, dem Beginn der Temperaturen; gesendet wurde {from}',
  'field.long-before-first':
    'darf nicht mehr als einen Tag vor dem Beginn der Temperaturen liegen; gesendet wurde {from}',
  'field.below-container':
    'darf in "{kind}" höchstens {maxDepthCm} sein, so tief gilt die Erde dort; gesendet wurden {depthCm}. Für tiefere Erde "raised-bed" senden',
  'field.bed-indoors':
    'nennt „{bed}“, das im Haus steht; nennen Sie das Beet, in dem die Kultur wachsen soll: Was im Haus vorgezogen wird, sagt der Plan selbst',
  'field.before-sowing': 'darf nicht vor der Saat am {sowingDate} liegen',
  'field.long-after-sowing':
    'muss innerhalb von {maxDays, plural, one {# Tag} other {# Tagen}} nach der Saat liegen, bis zum {by}',
  'field.day-to-come': 'darf kein künftiger Tag sein; heute ist der {todaysDate}',
  'field.to-come': `${MISSING}darf kein künftiger Tag sein${WAS}`,
  'field.of-seeds-needed': 'fehlt, weil die Saat nicht sagt, wie viele Samen es waren: Von wie vielen sind diese?',
  'field.many-seedlings':
    'darf nicht mehr sein als die {seeds, plural, one {# Same} other {# Samen}} dort, ausgezupfte mitgezählt; es waren {counted, number}. Zählen Sie weniger, oder senden Sie ofSeeds',
  'field.other-crops-lot': 'nennt „{lot}“, das ist Saatgut von {crop}; nennen Sie Saatgut der Kultur, die gesät wird',
  'field.after-first-count':
    'darf nicht nach der ersten Zählung am {countedOn} liegen; senden Sie ein früheres, oder löschen Sie Zählungen, die nicht dazu gehören, mit DELETE',
  'field.long-before-count':
    'muss innerhalb von {maxDays, plural, one {# Tag} other {# Tagen}} vor der letzten Zählung am {countedOn} liegen; senden Sie ein späteres, oder löschen Sie Zählungen, die nicht dazu gehören, mit DELETE',
  'field.fewer-than-counted':
    'darf nicht weniger sein als die {seedlings, plural, one {# gezählte Sämling} other {# gezählten Sämlinge}}; senden Sie mehr, oder löschen Sie Zählungen, die nicht dazu gehören, mit DELETE',
  'field.one-thermometer': 'kept gilt für ein Thermometer, und dieses Beet hat mehrere: Fügen Sie {ways} hinzu',
  'field.came-by-the-day':
    "kam nach Tagen, und ein Beet speichert Messwerte mit Zeitpunkt. Senden Sie diese; Tage der Luft gehören zu POST /v1/places/'{id}'/air, Tage des Bodens zu jeder Frage.",
  'field.bed-forecast': 'ist eine Vorhersage; von einem Beet wird nur Gemessenes gespeichert',
  'field.air-forecast': "ist eine Vorhersage; Kommendes gehört zu PUT /v1/places/'{id}'/coming-days",
  'field.air-not-measured':
    "darf nichts enthalten, was laut basis nicht gemessen ist; Kommendes gehört zu PUT /v1/places/'{id}'/coming-days",
  'field.not-forecast': "muss forecast sein; Gemessenes gehört zu POST /v1/places/'{id}'/air",
  'field.not-air': "muss air sein; Messwerte des Bodens gehören zu POST /v1/beds/'{id}'/readings",
  'field.private-address':
    'muss eine Adresse sein, die andere erreichen; {host} gehört diesem Rechner oder ist privat. Wer diesen Dienst betreibt, kann es mit ALLOW_PRIVATE_WEBHOOKS=1 erlauben',
  'field.address': 'muss eine ganze Adresse sein, etwa {example}',
  'field.address-scheme': 'muss mit {schemes} beginnen',
  'field.address-user': 'darf keinen Benutzernamen und kein Passwort enthalten',
  'field.address-fragment': 'darf kein Fragment (#…) enthalten, das nie gesendet wird',
  'field.address-placeholder': 'hat den Platzhalter {placeholder}; bekannt sind {placeholders}',
  'field.address-host': 'darf im Namen des Rechners keinen Platzhalter haben',

  // worker, answers, garden, germination: refusals
  'busy.queue': 'Zu viele Fragen zu vergangenen Jahren warten. Fragen Sie in Kürze wieder.',
  'busy.deadline':
    'Der Dienst hat gerade zu viel zu berechnen und kam nicht rechtzeitig dazu. Fragen Sie in Kürze wieder.',
  'stopping.worker': 'Der Dienst hält an und berechnet nichts mehr. Fragen Sie in Kürze wieder.',
  'no-latitude.soil':
    'Wie warm die Sonne den Boden unter dieser Luft macht, hängt von der Breite ab: Senden Sie where.place.latitude.',
  'no-latitude.soil.field': 'Ist nötig, um den Boden aus der Luft zu berechnen.',
  'ends-too-early.soil':
    'Die letzte Temperatur ist vom {lastDate}, mehr als ein Jahr vor dem {to}; senden Sie neuere, oder fragen Sie nach weniger.',
  'ends-too-early.soil.field': 'Später als ein Jahr nach dem {lastDate} wird nichts angenommen.',
  'ends-too-early.before-wetting':
    'Die letzte Temperatur ist vom {lastDate}, mehr als ein Jahr, bevor die Saat feucht wird; senden Sie neuere.',
  'ends-too-early.before-count':
    'Die Temperaturen enden am {lastDate}, gezählt wird am {countDate}. Senden Sie sie bis dahin, zählen Sie früher (countDays), oder sagen Sie mit "beyond", was anzunehmen ist.',
  'ends-too-early.before-count.field':
    '"refuse" erlaubt nichts nach dem letzten Wert; "seasonal-drift" und "repeat-last-week" erlauben es.',
  'not-understood.wetted-before-sowing':
    'Das Beet wird am {wettedOn} gegossen, vor der Saat am {sowingDate}; dann ist es nicht trocken. Senden Sie "moist" oder ein späteres wettedOn.',
  'not-understood.wetted-before-sowing.field': 'Darf nicht vor der Saat liegen.',
  'not-understood.wetted-after-count':
    'Die Saat wird am {wettedOn} gegossen und am {countDate} gezählt, bevor sie begonnen haben kann. Zählen Sie später (countDays), oder gießen Sie früher.',
  'not-understood.wetted-after-count.field': 'Muss über den Tag des Gießens hinausreichen.',
  'gap-too-long':
    'Zwischen {fromAt} und {toAt} gibt es über 14 Tage keine Temperatur. Senden Sie die fehlenden Tage oder nur, was auf die Lücke folgt, und fragen Sie nach einer Zeit danach.',
  'gap-too-long.around':
    'Aus den Wochen um den {date} ist keine Temperatur bekannt: Die bekannten liegen zu lange davor oder danach. Senden Sie die fehlenden Tage, oder fragen Sie nach einer Zeit, zu der es welche gibt.',
  'too-few-readings':
    'Weniger als ein ganzer Tag Temperaturen ist zu wenig; senden Sie mindestens 24 Stunden am Stück.',
  'starts-after-sowing':
    'Die Temperaturen beginnen am {firstDate}, mehr als einen Tag, nachdem die Saat feucht wurde. Senden Sie frühere, oder ein späteres Saatdatum.',
  'starts-after-sowing.field': 'Vor dem {firstDate} ist keine Temperatur bekannt.',
  'no-past-years.beyond':
    'Von diesem Ort sind weniger als {minYears} vergangene Jahre bekannt. Speichern oder senden Sie tägliche Minima und Maxima der Luft aus mehreren Jahren, oder setzen Sie "beyond" auf seasonal-drift, repeat-last-week oder refuse.',
  'no-past-years.beyond.field': 'Braucht {minYears} vergangene Jahre des Ortes.',
  'no-past-years.windows':
    'Aus den bekannten Temperaturen {years, plural, =0 {ergibt sich kein vergangenes Jahr} one {ergibt sich ein vergangenes Jahr} other {ergeben sich # vergangene Jahre}} dieser Daten, nötig sind {minYears}. Senden Sie tägliche Minima und Maxima der Luft aus mehr Jahren.',
  'no-past-years.windows.field': 'Die Luft dieser Daten muss aus {minYears} oder mehr Jahren bekannt sein.',
  'no-past-years.no-minima':
    "Für diesen Ort sind keine Minima der Luft gespeichert: Senden Sie zehn oder mehr vergangene Jahre an POST /v1/places/'{id}'/air.",
  'no-past-years.no-season':
    "Vom {from} bis zum {to} ist kein Frühjahr und kein Herbst ohne lange Lücken bekannt: Senden Sie zehn oder mehr vergangene Jahre an POST /v1/places/'{id}'/air.",
  'no-past-years.plan':
    "Ein Plan entsteht aus vergangenen Jahren, und vom Ort dieses Beets {years, plural, =0 {ist keines} one {ist nur # Jahr} other {sind nur # Jahre}} bekannt. Senden Sie tägliche Minima und Maxima der Luft aus {minYears} oder mehr Jahren mit POST an /v1/places/'{id}'/air, oder die Mittelwerte des Ortes mit PUT.",
  'no-readings.kept':
    'Bis heute sind keine Temperaturen gespeichert von {bed, select, none {dem Ort „{place}“. Senden Sie welche mit POST an /v1/places/{place}/air} other {dem Beet „{bed}“ oder seinem Ort „{place}“. Senden Sie welche mit POST an /v1/places/{place}/air oder /v1/beds/{bed}/readings}}, oder senden Sie "temperatures".',
  'unknown-crop':
    'Die Kultur „{id}“ gibt es hier nicht{alike, select, none {} other {; gemeint ist vielleicht {alike}}}. Wählen Sie eine von {ids}, oder senden Sie eigene Zeilen.',
  'unknown-crop.field': 'Diese Kultur gibt es nicht.',

  // contract: refusals of requests
  'foreign-origin':
    'Eine Seite von anderswo hat das in Ihrem Browser gesendet, und Ihre Sitzung gilt nur für die Seiten dieses Dienstes. Senden Sie es von dort, oder mit dem Header "Authorization: Bearer" und Ihrem Schlüssel.',
  'not-json.empty': 'Der Inhalt ist leer. Senden Sie die Frage als JSON.',
  'not-json.broken':
    'Der Inhalt ist kein gültiges JSON: Er bricht in Zeile {line} bei Zeichen {character} ab. Prüfen Sie dort Anführungszeichen, Kommas und Klammern.',
  'not-understood.many-fields':
    'Ein Objekt im Inhalt hat mehr als {maxFields} Felder. Lassen Sie weg, was die Dokumentation nicht nennt.',
  'not-understood.many-values':
    'Der Inhalt hat mehr als {maxValues} Werte. Senden Sie weniger Tage auf einmal, oder die Datei selbst als text/csv.',
  'not-understood.deep':
    'Listen und Objekte im Inhalt sind mehr als {maxDepth}fach verschachtelt. Keine Frage braucht mehr als 7.',
  'too-slow': 'Die Anfrage kam nicht rechtzeitig ganz an. Senden Sie sie noch einmal.',
  'too-slow.still':
    'Vom Inhalt kam {seconds, plural, one {# Sekunde} other {# Sekunden}} lang nichts mehr; die Anfrage wurde abgebrochen. Senden Sie sie noch einmal.',
  'bad-request': 'Die Anfrage ist nicht lesbar: {reason}.',
  'bad-request.address':
    'Die Adresse ist nicht lesbar: Ein Teil ist zu lang, oder auf ein % folgen nicht zwei Hex-Ziffern.',
  'bad-request.broken-off': 'Die Datei brach vor ihrem Ende ab. Senden Sie sie noch einmal.',
  'bad-request.headers': 'Die Header sind größer als 16 kB. Lassen Sie weg, was der Dienst nicht wissen muss.',
  'bad-request.no-http': 'Das ist kein lesbares HTTP. Prüfen Sie die Anfragezeile, die Header und die Länge.',
  'bad-request.two-hosts': 'Die Anfrage hat zwei Host-Header. Senden Sie einen (RFC 9112, Abschnitt 3.2).',
  'bad-request.no-host': 'Die Anfrage hat keinen Host-Header. Senden Sie einen (RFC 9112, Abschnitt 3.2).',
  'not-found.address': 'Unter {path} gibt es nichts; /docs nennt alle Adressen.',
  'method-not-allowed': '{path} nimmt {methods}, nicht {method}.',
  'unsupported-coding':
    'Der Inhalt kommt als Content-Encoding "{coding}". Senden Sie ihn ungepackt, ohne diesen Header.',
  'unsupported-media-type':
    'Setzen Sie Content-Type auf application/json, oder auf text/csv für die Datei eines Loggers.',
  'unsupported-media-type.file': 'Diese Adresse nimmt keine Datei: Setzen Sie Content-Type auf application/json.',
  'not-acceptable': 'Diese Adresse antwortet in {mediaTypes}, der Accept-Header erlaubt nur {accept}.',
  'key-in-address':
    'Die Adresse enthält einen Schlüssel, und Adressen bleiben in Verläufen und Protokollen. Senden Sie ihn im Header "Authorization: Bearer", und lassen Sie ihn ändern.',
  misdirected:
    'Dieser Dienst antwortet nicht für den Host "{host}". Fragen Sie localhost, oder lassen Sie den Namen in ALLOWED_HOSTS eintragen.',
  unauthorized: 'Senden Sie den Header "Authorization: Bearer" und dahinter Ihren Schlüssel.',
  'unauthorized.unknown-key':
    'Das ist keiner der Schlüssel dieses Dienstes. Prüfen Sie ihn auf fehlende oder vertauschte Zeichen.',
  'unauthorized.session':
    'Gesendet wurde weder ein hiesiger Schlüssel noch eine Sitzung dazu. Senden Sie den Header "Authorization: Bearer" und dahinter Ihren Schlüssel.',
  'too-many-requests':
    'Es kamen mehr als {perMinute} {policy, select, work {Fragen zu vergangenen Jahren} other {Anfragen}} in der Minute. Weiter geht es in {waitS, plural, one {einer Sekunde} other {# Sekunden}}.',
  'too-much-at-once':
    '{atOnce} Antworten aus vergangenen Jahren werden schon für Sie berechnet. Warten Sie auf eine davon, dann fragen Sie wieder.',
  'too-large':
    'Der Inhalt ist größer, als diese Adresse nimmt: 4 MB JSON, 256 MB CSV, 16 kB Formular. Senden Sie weniger Tage oder stündliche Messwerte.',
  'too-large.file':
    'Die Datei ist größer als 256 MB. Senden Sie weniger Jahre auf einmal, oder gröbere Messwerte: Stündliche genügen.',
  stopping: 'Der Dienst hält an. Senden Sie das in Kürze noch einmal.',
  'busy.asker-gone': 'Wer das zuerst fragte, ging vor der Antwort. Fragen Sie noch einmal.',
  internal: 'Hier ging etwas schief; im Protokoll findet es sich unter der Kennung in instance.',
  'storage-unavailable':
    'Gespeichertes ist gerade nicht erreichbar. Versuchen Sie es in ein paar Sekunden wieder: Zweimal senden schadet nicht.',
  'storage-full':
    'Der Datenträger ist voll, gespeichert wurde nichts. Löschen geht weiterhin. Versuchen Sie es wieder, sobald der Betreiber Platz gemacht hat.',
  'storage-damaged':
    'Die Datenbankdatei ist beschädigt, fort oder ersetzt, gespeichert werden kann nichts. Der Betreiber muss das beheben; das Protokoll sagt mehr.',
  'quota-full':
    'Gespeichert wären {used} {quota, select, places {Orte} beds {Beete} sowings {Saaten} lots {Saatgutposten} plans {Pläne} subscriptions {Abonnements} thermometers {Thermometer in diesem Beet} devices {Geräte dieses Beets} other {Megabyte an Messwerten und Luft}}, erlaubt sind {limit}. Löschen Sie, was nicht mehr gebraucht wird, und senden Sie das noch einmal.',
  'not-found.kept':
    'Unter „{id}“ ist nichts gespeichert ({kind, select, place {Ort} bed {Beet} lot {Saatgut} sowing {Saat} subscription {Abonnement} plan {Plan} other {Sitzung}}); GET /v1/{kind}s nennt alle.',
  'not-found.put-first':
    'Unter „{id}“ ist nichts gespeichert ({kind, select, place {Ort} bed {Beet} lot {Saatgut} sowing {Saat} subscription {Abonnement} plan {Plan} other {Sitzung}}). Senden Sie es zuerst mit PUT an /v1/{kind}s/{id}.',
  'not-found.count': 'Von „{id}“ gibt es keine Zählung an diesem Tag; GET /v1/sowings/{id} nennt alle.',
  'not-found.crop': 'Die Kultur „{id}“ gibt es nicht; GET /v1/crops nennt alle.',
  'not-found.calendar':
    'Unter dieser Adresse gibt es keinen Kalender. Die ganze Adresse samt Kennwort nennt das Beet als calendarUrl.',
  'not-found.problem': 'Ein Problem namens „{name}“ gibt es nicht.',
  'not-found.readings': 'Von „{bed}“ sind dort keine Messwerte gespeichert.',
  'not-found.of-place':
    "Für „{place}“ ist nichts unter {what} gespeichert; PUT /v1/places/'{id}'/{what} speichert etwas.",
  'unknown-place': 'Unter „{id}“ ist kein Ort gespeichert: zuerst PUT /v1/places/{id}.',
  'unknown-place.question':
    'Unter „{id}“ ist kein Ort gespeichert. Senden Sie ihn zuerst mit PUT an /v1/places/{id}, oder senden Sie den Ort selbst: Breite und Zeitzone.',
  'unknown-place.field': 'Diesen Ort gibt es nicht.',
  'unknown-bed': 'Unter „{id}“ ist kein Beet gespeichert: zuerst PUT /v1/beds/{id}.',
  'unknown-bed.question':
    'Unter „{id}“ ist kein Beet gespeichert. Senden Sie es zuerst mit PUT an /v1/beds/{id}, oder senden Sie where.place mit Breite und Zeitzone.',
  'unknown-bed.field': 'Dieses Beet gibt es nicht.',
  'unknown-lot': 'Unter „{id}“ ist kein Saatgut gespeichert: zuerst PUT /v1/lots/{id}.',
  'unknown-lot.question':
    'Unter „{id}“ ist kein Saatgut gespeichert. Senden Sie es zuerst mit PUT an /v1/lots/{id}, oder senden Sie die Angaben selbst.',
  'unknown-lot.field': 'Dieses Saatgut gibt es nicht.',
  'unknown-crop.listed': 'Die Kultur „{id}“ gibt es hier nicht; GET /v1/crops nennt alle.',
  'not-understood.lot-of-other-crop': 'Das Saatgut „{lot}“ ist von {lotCrop}, nicht von {crop}.',
  'not-understood.lot-of-other-crop.field': 'Ist von einer anderen Kultur: {lotCrop}.',
  'time-zone-needed.question': 'Daten sagen ohne die Zeitzone des Ortes nichts: Senden Sie where.place.timeZone.',
  'time-zone-needed.question.field': 'Ist nötig, wo keine Temperaturen gesendet werden.',
  'no-latitude.drift':
    'Der Gang der Jahreszeit hängt von der Breite ab: Senden Sie where.place.latitude, oder setzen Sie "beyond" auf repeat-last-week.',
  'no-latitude.drift.field': 'Ist für seasonal-drift nötig.',
  'too-few-readings.air':
    'Kein Tag der Reihe ist vollständig, und Luft wird nach ganzen Tagen gespeichert. Senden Sie mindestens 18 der 24 Stunden.',
  'has-beds':
    '„{place}“ hat Beete und bleibt, gelöscht wurde nichts. Verlegen oder löschen Sie sie zuerst, oder senden Sie ?with=beds, um sie mit ihren Messwerten zu löschen.',
  'has-sowings':
    '„{bed}“ hat Saaten und bleibt, gelöscht wurde nichts. Verlegen oder löschen Sie sie zuerst, oder senden Sie ?with=sowings, um sie mit ihren Zählungen zu löschen.',
  'has-sowings.lot':
    'Das Saatgut „{lot}“ wurde gesät, und die Saaten nennen es. Löschen Sie diese zuerst, oder lassen Sie sie anderes Saatgut nennen.',
  'too-many-seeds':
    'Nicht einmal {maxSeeds} Samen geben {plants, plural, one {eine Pflanze} other {# Pflanzen}} mit einer Sicherheit von {sureness}: So wenig davon ginge in diesem Beet auf. Fragen Sie nach weniger Pflanzen oder weniger Sicherheit, oder nehmen Sie besseres Saatgut.',
  'precondition-failed.unquoted':
    'If-Match nimmt eine Marke in doppelten Anführungszeichen, wie sie im ETag steht: Senden Sie "{tag}" samt Anführungszeichen. Geändert wurde nichts.',
  'precondition-failed.changed':
    'Es wurde geändert, seit Sie es gelesen haben; getan wurde nichts. Holen Sie es mit GET, und senden Sie Ihre Änderung mit dem neuen ETag noch einmal.',
  'precondition-failed.nothing-kept':
    'Hier ist nichts gespeichert, also kann es nicht in dem Zustand sein, den If-Match nennt. Lassen Sie den Header weg, um es anzulegen.',
  'precondition-failed.something-kept':
    'Hier ist schon etwas gespeichert; getan wurde nichts. Wählen Sie einen anderen Namen, oder lassen Sie If-None-Match weg, um es zu ersetzen.',
  'incomplete-days':
    '{days, plural, one {Ein Tag fehlt} other {# Tage fehlen}}, mit Messwerten von weniger als 18 Stunden. Senden Sie {days, plural, one {ihn} other {sie}} wieder, wenn vollständig.',
  'kept-in-part':
    'Es ist gespeichert. Der Rest dieser Antwort lässt sich jetzt nicht berechnen: Fragen Sie in Kürze wieder danach.',

  // The garden.
  'as-said': '{words}',
  'source-stale':
    '{ageHours, select, none {Die Quelle des Ortes, {source}, wurde noch nicht gefragt; das geschieht in wenigen Minuten.} other {Die Quelle des Ortes, {source}, ist im Rückstand. Ihre letzte gute Antwort gilt weiter; sie ist {ageDays, plural, =0 {{ageHours, plural, =0 {keine Stunde} one {# Stunde} other {# Stunden}}} one {# Tag} other {# Tage}} alt.}}',
  'source-failing':
    '{ageHours, select, none {Die Quelle des Ortes, {source}, hat noch nie brauchbar geantwortet, bei {failures, plural, one {einem Versuch} other {# Versuchen}}.} other {Die Quelle des Ortes, {source}, hat {failures, plural, one {einmal} other {#-mal}} hintereinander versagt. Ihre letzte gute Antwort gilt weiter; sie ist {ageDays, plural, =0 {{ageHours, plural, =0 {keine Stunde} one {# Stunde} other {# Stunden}}} one {# Tag} other {# Tage}} alt.}}',
  'readings-to-come':
    'Zu diesem Beet sind Messwerte kommender Tage gespeichert, bis {lastDate}; sie bleiben außer Acht, denn heute ist der {todayDate}. Ging die Uhr des Loggers falsch oder stimmt das Jahr nicht: DELETE /v1/beds/{bed}/readings?from={deleteFrom}, und die Werte neu senden.',
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
  'weather-of-growth':
    '{crop}: {isJudged, select, yes {Wann geerntet wird, folgt aus Frost, Wärme und Tageslänge; Trockenheit, Schädlinge und die Sorte bleiben außer Acht.} other {Was das Wetter nach dem Aufgehen bewirkt, bleibt bis auf Frost und kurze Tage außer Acht. Hitze lässt manche Kultur schießen, andere leiden unter Trockenheit und Schädlingen.}}',
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
  'news.hot-spell':
    '{crop}, gesät am {sownOn}, Beet {bed}: Hitze steht bevor. Vom {from} bis zum {to} wird es an der Saat bis zu {peakC} warm; über {thresholdC} hält Hitze sie auf ({severity, select, severe {stark} other {mäßig}}).{spells, plural, one {} other { Insgesamt stehen # Hitzezeiten bevor.}} Schatten und Wasser helfen; beachten Sie die örtlichen Regeln zum Gießen.',
  'news.emergence-shift':
    '{crop}, gesät am {sownOn}, Beet {bed}: {halfOn, select, none {Bis zur Zählung ist nicht mehr zu erwarten, dass die Hälfte aufgeht{beforeOn, select, none {} other {; zuvor war es der {beforeOn}}}.} other {{beforeOn, select, none {Die Hälfte ist nun doch zu erwarten, und zwar am {halfOn}.} other {Die Hälfte ist nun am {halfOn} zu erwarten, {shiftDays, plural, one {# Tag} other {# Tage}} {isLater, select, yes {später} other {früher}} als zuletzt gemeldet ({beforeOn}).}}}}',
  'news.frost':
    '{crop}, gesät am {sownOn}, Beet {bed}: Frost kann den Sämlingen schaden. Für den {date} sind {minC} in der Luft vorhergesagt{nights, plural, one {} other {, und Frost für insgesamt # Nächte}}. Decken Sie sie über Nacht ab; in Senken und in stillen, klaren Nächten ist es kälter, als eine Vorhersage der Luft sagt.',
  'news.window-open':
    '{crop}, Beet {bed}: Bis zum {to} ist eine gute Zeit zum Säen, nach den vergangenen Jahren am Ort. Sehen Sie zuerst nach dem Boden: Ob er sich bearbeiten lässt, ist hier nicht bekannt.',
  // contract: problems, by their code
  'title.bad-request': 'Die Anfrage ist nicht lesbar',
  'cause.bad-request': 'Die Anfragezeile, ein Header oder die Adresse ist nicht wohlgeformt.',
  'cure.bad-request':
    'Prüfen Sie die Adresse auf verirrte %-Zeichen, und die Header auf das, was Ihr Werkzeug hinzufügt.',
  'title.key-in-address': 'Die Adresse enthält einen Schlüssel',
  'cause.key-in-address':
    'In der Adresse steht ein Schlüssel. Adressen bleiben in Verläufen und in den Protokollen jedes Servers unterwegs.',
  'cure.key-in-address':
    'Senden Sie den Schlüssel im Header "Authorization: Bearer", und lassen Sie ihn vom Betreiber ändern.',
  'title.misdirected': 'Dieser Dienst antwortet nicht für diesen Host',
  'cause.misdirected':
    'Der Dienst ist nur für diesen Rechner offen, und der Host-Header nennt etwas anderes: Eine fremde Seite kann ihrem eigenen Namen die Adresse dieses Rechners gegeben haben.',
  'cure.misdirected': 'Fragen Sie localhost, oder lassen Sie den Namen, den Sie verwenden, in ALLOWED_HOSTS eintragen.',
  'title.too-slow': 'Die Anfrage kam zu langsam',
  'cause.too-slow': 'Ihre Header, oder das nächste Stück ihres Inhalts, kamen nicht innerhalb einer Minute.',
  'cure.too-slow':
    'Senden Sie sie noch einmal; eine große Datei über eine langsame Leitung in Teilen mit weniger Tagen.',
  'title.not-json': 'Der Inhalt ist kein JSON',
  'cause.not-json': 'Der Inhalt gibt sich als JSON aus, ist aber nicht lesbar oder leer.',
  'cure.not-json': 'Prüfen Sie Anführungszeichen, Kommas und Klammern an der genannten Stelle.',
  'title.not-csv': 'Die Datei ist keine Tabelle aus Text',
  'cause.not-csv':
    'Der Inhalt ist leer, ein Archiv, ein Bild, eine Webseite, oder Zeilen ohne zusammengehörige Zellen.',
  'cure.not-csv': 'Exportieren Sie die Messwerte als CSV: eine Messung je Zeile, darin Datum, Uhrzeit und Temperatur.',
  'title.no-readings': 'Es wurden keine Messwerte gefunden',
  'cause.no-readings':
    'Die Datei ist eine Tabelle, aber keine Spalte enthält Daten, oder keine Temperaturen, oder keine Zeile beides. Oder von dem Beet oder Ort der Frage ist noch nichts gespeichert.',
  'cure.no-readings':
    'Schreiben Sie Datum, Uhrzeit und Temperatur in jede Zeile; "errors" sagt, was stattdessen gefunden wurde. Von einem Ort oder Beet senden Sie zuerst die Luft oder die Messwerte.',
  'title.not-understood': 'Etwas in der Anfrage ist nicht brauchbar',
  'cause.not-understood': 'Ein Feld fehlt, ist unbekannt, von der falschen Art oder außerhalb der Grenzen.',
  'cure.not-understood': 'Jeder Eintrag in "errors" nennt ein Feld und was es sein muss.',
  'title.too-large': 'Die Anfrage ist zu groß',
  'cause.too-large': 'Der Inhalt ist größer, als diese Adresse nimmt.',
  'cure.too-large': 'Senden Sie weniger Tage oder gröbere Messwerte: Stündliche genügen.',
  'title.unsupported-media-type': 'Diese Art von Inhalt nimmt die Adresse nicht',
  'cause.unsupported-media-type': 'Content-Type ist weder application/json noch, wo eine Datei gilt, text/csv.',
  'cure.unsupported-media-type': 'Setzen Sie Content-Type auf das, was der Inhalt ist.',
  'title.unsupported-coding': 'Der Inhalt ist gepackt',
  'cause.unsupported-coding':
    'Der Header Content-Encoding sagt, dass der Inhalt gepackt ist; genommen wird er nur, wie er ist.',
  'cure.unsupported-coding': 'Senden Sie den Inhalt ungepackt, ohne Content-Encoding.',
  'title.not-acceptable': 'Keine Antwort der gewünschten Art',
  'cause.not-acceptable': 'Der Accept-Header erlaubt nichts, was diese Adresse gibt.',
  'cure.not-acceptable': 'Erlauben Sie application/json.',
  'title.not-found': 'Hier ist nichts',
  'cause.not-found': 'Die Adresse, oder was sie nennt, gibt es nicht.',
  'cure.not-found': '/docs nennt alle Adressen.',
  'title.method-not-allowed': 'Das geht hier nicht',
  'cause.method-not-allowed': 'Die Adresse gibt es, aber nicht für diese Methode.',
  'cure.method-not-allowed': 'Der Header Allow nennt die Methoden, die sie nimmt.',
  'title.unauthorized': 'Ein Schlüssel ist nötig',
  'cause.unauthorized':
    'Dieser Dienst läuft mit Schlüsseln, und die Anfrage trägt keinen davon. WWW-Authenticate sagt, ob keiner kam (Bearer) oder ein falscher (error="invalid_token").',
  'cure.unauthorized':
    'Senden Sie "Authorization: Bearer" und Ihren Schlüssel; im Browser geben Sie ihn einmal ein, dann steht ein Cookie dafür.',
  'title.foreign-origin': 'Die Anfrage kommt von anderswo',
  'cause.foreign-origin':
    'Eine fremde Seite hat sie in einem Browser gesendet, der hier eine Sitzung hat, oder will eine beginnen oder beenden. Oder etwas zwischen Browser und Dienst ändert den Host-Header.',
  'cure.foreign-origin':
    'Senden Sie sie von einer Seite dieses Dienstes, oder mit "Authorization: Bearer" und Ihrem Schlüssel; was vor dem Dienst steht, muss den Host-Header weitergeben.',
  'title.precondition-failed': 'Es ist nicht mehr, wie Sie es kannten',
  'cause.precondition-failed':
    'If-Match nennt einen anderen Zustand als den gespeicherten, oder es ist nichts gespeichert; oder If-None-Match sagt, dass nichts da sein darf, und es ist etwas da.',
  'cure.precondition-failed':
    'Holen Sie es mit GET, sehen Sie nach, was sich geändert hat, und senden Sie Ihre Änderung mit dem neuen ETag noch einmal, oder unter einem anderen Namen.',
  'title.has-beds': 'Der Ort hat Beete',
  'cause.has-beds':
    'Ein Ort wird nur gelöscht, wenn kein Beet darin liegt, damit keine Messwerte versehentlich verloren gehen.',
  'cure.has-beds': 'Verlegen oder löschen Sie zuerst seine Beete, oder senden Sie "with=beds", um sie mitzulöschen.',
  'title.has-sowings': 'Es hat Saaten',
  'cause.has-sowings':
    'Ein Beet oder Saatgut wird nur gelöscht, wenn keine Saat es nennt, damit keine Zählungen versehentlich verloren gehen.',
  'cure.has-sowings': 'Verlegen oder löschen Sie zuerst die Saaten; bei einem Beet löscht "with=sowings" sie mit.',
  'title.quota-full': 'Mehr darf nicht gespeichert werden',
  'cause.quota-full': 'Der Betreiber lässt jeden nur so viele Dinge einer Art oder so viele Megabyte speichern.',
  'cure.quota-full':
    'Löschen Sie, was nicht mehr gebraucht wird; GET /v1/usage sagt, was da ist. Oder bitten Sie den Betreiber um mehr.',
  'title.too-many-requests': 'Zu viele Anfragen',
  'cause.too-many-requests':
    'Dieser Inhaber, oder diese Adresse, hat öfter gefragt, als der Dienst in einer Minute erlaubt.',
  'cure.too-many-requests': 'Warten Sie so viele Sekunden, wie Retry-After sagt.',
  'title.too-much-at-once': 'Zu viel auf einmal',
  'cause.too-much-at-once':
    'Für diesen Inhaber, oder diese Adresse, werden schon so viele Antworten aus vergangenen Jahren berechnet, wie gleichzeitig sein dürfen.',
  'cure.too-much-at-once': 'Warten Sie, bis einige davon da sind, oder so viele Sekunden, wie Retry-After sagt.',
  'title.storage-unavailable': 'Gespeichertes ist nicht erreichbar',
  'cause.storage-unavailable':
    'Die Datenbank ist gerade nicht nutzbar; Fragen, die ihre Temperaturen mitbringen, werden wie immer beantwortet.',
  'cure.storage-unavailable':
    'Senden Sie die Anfrage nach so vielen Sekunden wieder, wie Retry-After sagt; zweimal senden schadet nicht.',
  'title.storage-full': 'Zum Speichern ist kein Platz',
  'cause.storage-full':
    'Der Datenträger der Datenbank ist voll. Geändert wurde nichts; Fragen werden beantwortet, und Löschen geht.',
  'cure.storage-full':
    'Der Betreiber muss Platz machen. Senden Sie die Anfrage nach so vielen Sekunden wieder, wie Retry-After sagt; zweimal senden schadet nicht.',
  'title.storage-damaged': 'Die Datenbank ist beschädigt',
  'cause.storage-damaged':
    'Die Datei der Datenbank ist beschädigt, oder wurde entfernt oder ersetzt, während der Dienst lief. Geändert wurde nichts; Fragen, die ihre Temperaturen mitbringen, werden wie immer beantwortet.',
  'cure.storage-damaged':
    'Warten hilft nicht. Der Betreiber muss den Dienst neu starten, nötigenfalls mit einer Sicherung; das Protokoll nennt die Datei.',
  'title.busy': 'Es wird schon zu viel berechnet',
  'cause.busy':
    'Fragen zu vergangenen Jahren, die Sekunden brauchen, warten, bis sie dran sind; mehr dürfen nicht warten, oder diese hat zu lange gewartet.',
  'cure.busy': 'Senden Sie die Anfrage nach so vielen Sekunden wieder, wie Retry-After sagt.',
  'title.stopping': 'Der Dienst hält an',
  'cause.stopping': 'Er soll anhalten und nimmt nichts mehr an. Geändert wurde nichts.',
  'cure.stopping':
    'Senden Sie die Anfrage nach so vielen Sekunden wieder, wie Retry-After sagt: Ein anderer, oder der Dienst selbst, wenn er wieder läuft, beantwortet sie.',
  'title.unknown-crop': 'Diese Kultur gibt es nicht',
  'cause.unknown-crop': 'Die Kultur ist keine von denen in GET /v1/crops.',
  'cure.unknown-crop': 'Verwenden Sie eine von deren Ids, oder senden Sie eigene Zeilen.',
  'title.unknown-place': 'Diesen Ort gibt es nicht',
  'cause.unknown-place': 'Der Ort wird mit einer Id genannt, unter der nichts gespeichert ist.',
  'cure.unknown-place': 'Senden Sie den Ort selbst: Breite, Länge und Zeitzone.',
  'title.unknown-bed': 'Dieses Beet gibt es nicht',
  'cause.unknown-bed': 'Das Beet wird mit einer Id genannt, unter der nichts gespeichert ist.',
  'cure.unknown-bed': 'Senden Sie den Ort, und das Beet, wenn es kein Freiland ist.',
  'title.unknown-lot': 'Dieses Saatgut gibt es nicht',
  'cause.unknown-lot': 'Das Saatgut wird mit einer Id genannt, unter der nichts gespeichert ist.',
  'cure.unknown-lot': 'Senden Sie es zuerst mit PUT, oder senden Sie, was vom Saatgut bekannt ist.',
  'title.too-many-seeds': 'Mehr Samen, als sich säen lassen',
  'cause.too-many-seeds':
    'So wenig des Saatguts würde zu Pflanzen, dass nicht einmal zehn Millionen die Zahl so sicher geben wie gewünscht.',
  'cure.too-many-seeds': 'Fragen Sie nach weniger Pflanzen oder weniger Sicherheit, oder nehmen Sie besseres Saatgut.',
  'title.time-zone-needed': 'Die Zeitzone ist nicht bekannt',
  'cause.time-zone-needed': 'Tage, oder Zeitstempel ohne Abstand zu UTC, sagen ohne die Zeitzone des Ortes nichts.',
  'cure.time-zone-needed': 'Senden Sie die Zeitzone als IANA-Namen wie Etc/GMT+2.',
  'title.no-past-years': 'Zu wenige vergangene Jahre sind bekannt',
  'cause.no-past-years':
    'Die Frage braucht die Luft vergangener Jahre, und für diesen Ort sind zu wenige gesendet oder gespeichert.',
  'cure.no-past-years':
    'Senden Sie die Luft von mehr vergangenen Jahren, nach Tagen. Für eine Vorhersage genügt auch "beyond" mit seasonal-drift, repeat-last-week oder refuse.',
  'title.no-latitude': 'Die Breite ist nicht bekannt',
  'cause.no-latitude':
    'Die Sonne über einem Beet und der Gang der Jahreszeit hängen von der Breite ab, und sie wurde nicht gesendet.',
  'cure.no-latitude':
    'Senden Sie die Breite; Bodentemperaturen allein kommen ohne sie aus, wenn "beyond" repeat-last-week ist.',
  'title.starts-after-sowing': 'Die Temperaturen beginnen nach der Saat',
  'cause.starts-after-sowing': 'Vom Boden zur Zeit der Saat ist nichts bekannt.',
  'cure.starts-after-sowing': 'Senden Sie frühere Temperaturen, oder ein späteres Saatdatum.',
  'title.ends-too-early': 'Die Temperaturen enden zu früh',
  'cause.ends-too-early':
    'Sie reichen nicht bis zu der Zeit, die die Antwort braucht, und danach darf nichts angenommen werden.',
  'cure.ends-too-early': 'Senden Sie mehr Tage, zählen Sie früher, oder sagen Sie mit "beyond", was anzunehmen ist.',
  'title.too-few-readings': 'Zu wenige Temperaturen',
  'cause.too-few-readings': 'Weniger als ein ganzer Tag ist bekannt.',
  'cure.too-few-readings': 'Senden Sie mindestens 24 Stunden am Stück.',
  'title.gap-too-long': 'Die Lücke ist zu lang',
  'cause.gap-too-long': 'Um die Saat herum wurde über 14 Tage nichts gemessen.',
  'cure.gap-too-long': 'Senden Sie die fehlenden Tage, oder nur, was auf die Lücke folgt.',
  'title.choose-medium': 'Boden oder Luft?',
  'cause.choose-medium': 'Weder die Spalte noch die Anfrage sagt, wo das Thermometer war.',
  'cure.choose-medium': 'Senden Sie "medium" mit einer der Möglichkeiten.',
  'title.choose-unit': 'Welche Einheit?',
  'cause.choose-unit': 'Aus den Temperaturen geht nicht hervor, ob sie in °C, °F oder K sind.',
  'cure.choose-unit': 'Senden Sie "unit" mit einer der Möglichkeiten.',
  'title.choose-column': 'Welche Spalte?',
  'cause.choose-column': 'Mehr als eine Spalte passt.',
  'cure.choose-column': 'Senden Sie "column" oder "timeColumn" mit einer der Möglichkeiten.',
  'title.choose-date-order': 'Tag oder Monat zuerst?',
  'cause.choose-date-order': 'Die Daten lassen sich verschieden lesen, und nichts in der ganzen Spalte zeigt, wie.',
  'cure.choose-date-order': 'Senden Sie "dateOrder" mit einer der Möglichkeiten.',
  'title.choose-clock': 'Welche Uhr?',
  'cause.choose-clock':
    'Die Zeitstempel laufen ohne Sprung weiter, wo die Uhren am Ort umgestellt werden; der Logger geht also anders.',
  'cure.choose-clock': 'Senden Sie "clock" mit einer der Möglichkeiten.',
  'title.choose-decimal-mark': 'Punkt oder Komma?',
  'cause.choose-decimal-mark': 'Kommas trennen die Zellen und können auch in den Zahlen stehen.',
  'cure.choose-decimal-mark': 'Senden Sie "decimalMark" mit einer der Möglichkeiten.',
  'title.internal': 'Hier ging etwas schief',
  'cause.internal': 'Ein Fehler des Dienstes, nicht der Anfrage.',
  'cure.internal': 'Versuchen Sie es wieder; bleibt es dabei, nennen Sie dem Betreiber die Kennung in instance.',
  'problem-page.status': 'Problem {problem}, HTTP-Status {status}.',
  'problem-page.cause': 'Warum',
  'problem-page.cure': 'Was tun',

  // Sources of air, and outgoing messages.
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
    'Die Antwort der Quelle ist nicht {form, select, archive {das JSON eines Tagesarchivs, mit properties.parameter und parameters} grid {das JSON eines Vorhersagerasters, mit temperature, maxTemperature oder minTemperature} observations {das JSON einer Schnittstelle für Beobachtungen, mit einer Liste unter value} columns {Tagesspalten als JSON, mit daily.time, temperature_2m_max und temperature_2m_min} timeseries {eine Zeitreihe als GeoJSON, mit properties.timeseries und deren Einheiten} point {das JSON eines Punktes, mit properties.forecastGridData} other {das JSON eines Datastreams, mit seiner unitOfMeasurement}}{at, select, none {} other { (bei {at})}}.',
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

  // answers/windows and readings: air minima that frost dates leave out, and the position of a thermometer
  'frost-hollow':
    'An diesem Thermometer gab es auch im {summer, select, south {Dezember, Januar und Februar} other {Juni, Juli und August}} Frost. Vielleicht liegt es in einem Frostloch, oder seine Daten sind falsch. Fragen Sie nach den Frostterminen der Gärten in der Nähe: Sie haben womöglich Wochen mehr.',
  'doubtful-minimum':
    '{days, plural, one {Am {date} lag der Tiefstwert mit {minC}} other {An # Tagen, zuerst am {date} mit {minC}, lag der Tiefstwert}} weit unter den Nächten davor und danach, während sich die Höchstwerte kaum änderten. Prüfen Sie {days, plural, one {diesen Messwert} other {diese Messwerte}}: Bei den Frostterminen {days, plural, one {fehlt er} other {fehlen sie}}.',

  // growth and answers: risks to a row, and remedies
  'risk.seedcorn-maggot':
    'Säen Sie ein bis zwei Wochen nach dem {peakDate} in warmen Boden, oder decken Sie die Reihe mit feinem Netz ab. Die Fliegen der {brood}. Generation, deren Maden keimende Samen fressen, sind um diese Zeit am häufigsten{spread, select, days { ({fromDate} bis {toDate})} other {}}. Frischer Mist und eben untergegrabenes Grün locken sie an.',
  'risk.onion-maggot':
    'Legen Sie bis zum {fromDate} ein Netz über die Reihe, drücken Sie die Erde an, und räumen Sie alte Zwiebeln weg. Die Zwiebelfliegen der {brood}. Generation sind etwa am {peakDate} am häufigsten{spread, select, days {, in manchen Jahren noch bis zum {toDate}} other {}}.',
  'risk.cabbage-maggot':
    'Legen Sie von der Saat an ein Netz über die Reihe. Die Kohlfliegen der {brood}. Generation legen etwa am {peakDate} die meisten Eier{spread, select, days { ({fromDate} bis {toDate})} other {}}.',
  'risk.carrot-rust-fly':
    '{brood, plural, one {Säen Sie nach dem {toDate}, um dem ersten Flug der Möhrenfliege zu entgehen, oder legen Sie ein Netz über die Reihe. Die Fliegen schlüpfen etwa am {peakDate}{spread, select, days {, frühestens um den {fromDate}} other {}}.} other {Legen Sie bis zum {fromDate} ein Netz über die Reihe: Die Möhrenfliegen schlüpfen zum #. Mal etwa am {peakDate}{spread, select, days {, in den meisten Jahren bis zum {toDate}} other {}}. Gegen sie hilft späteres Säen nicht.}} Vereinzeln Sie abends, und gießen Sie danach.',
  'risk.carrot-weevil':
    'Säen Sie, wo im Vorjahr weder Möhren noch Sellerie oder Petersilie standen, oder legen Sie ein Netz über die Reihe. Die Möhrenrüssler sind etwa am {peakDate} am häufigsten{spread, select, days { ({fromDate} bis {toDate})} other {}}. Sie legen Eier, sobald die Pflanzen etwa vier Blätter haben.',
  'risk.damping-off':
    'Säen Sie dünn, lüften Sie, und halten Sie die Erde nur eben feucht, nie nass. Saat, die in kühler Erde lange liegt, fault, oder ihre Keimlinge fallen um.',
  'pest-dates':
    'Die Daten der Schädlinge folgen allein aus der Wärme von {years, plural, one {# früheren Jahr} other {# früheren Jahren}}. Ein Schädling muss bei Ihnen nicht vorkommen. Folgen Sie der örtlichen Beratung und dem Etikett dessen, was Sie verwenden.',

  // garden: Pflanzen, die in ihren Schalen warten
  'planting-out-unknown':
    'Warten Sie mit dem Auspflanzen ({crop}) auf Ihren letzten Frost: Kein früheres Jahr sagt, wie die Nächte sind. Mit den Höchst- und Tiefstwerten einiger Jahre gibt es ein Datum.',

  // answers und germination: was die Gärtnerin und den Gärtner schützt
  'electricity-near-water':
    'Ziehen Sie vor dem Gießen die Stecker von Lampen und Heizmatten. Nehmen Sie nur solche, die für feuchte Räume gemacht sind, an einem FI-Schalter und mit dem Stecker über allem, was tropft.',
  'mould-on-paper':
    'Sehen Sie täglich nach dem feuchten Papier. Werfen Sie schimmlige Samen samt Papier weg, atmen Sie nicht darüber, und waschen Sie sich die Hände.',
  'compost-dust':
    'Befeuchten Sie Erde und Kompost, bevor Sie damit arbeiten, halten Sie das Gesicht vom offenen Sack fern, und waschen Sie sich danach die Hände. Der Staub kann Keime tragen, die schwer krank machen (Legionellen).',
  'hot-clear-film':
    'Nehmen Sie klare Folie ab, sobald die ersten Keimlinge zu sehen sind, an sonnigen Tagen schon vorher. Darunter kann die Sonne sie verbrühen.',
  'heat-for-you':
    'Arbeiten Sie an heißen Tagen früh oder spät, und nehmen Sie Wasser mit. Hören Sie auf, wenn Ihnen schwindlig wird.',
  'burning-sap':
    'Tragen Sie beim Vereinzeln und Schneiden an hellen Tagen Handschuhe und lange Ärmel. Der Saft auf der Haut kann mit der Sonne Verbrennungen und Blasen geben; waschen Sie ihn gleich ab.',
  'look-alikes':
    'Essen Sie nur, was Sie selbst gesät haben. Tödlich giftige Wildpflanzen derselben Familie, etwa der Schierling, sehen sehr ähnlich aus.',
  // garden: triage of a row, and why little came up
  'do.wait':
    '{found, select, some {Warten: Einiges ist aufgegangen, mehr kann noch kommen.} other {Warten: Etwa {livingRows} von {ofRows} solchen Reihen {livingRows, plural, one {geht} other {gehen}} noch auf.{bareCounts, plural, one { Eine einzelne Zählung kann übersehen, was gerade erst kommt.} other {}}}} Sehen Sie am {lookOn} wieder nach.{again, select, no {} then { Dann noch kahl? Neu säen.} other { Am {againOn, select, none {} other {{againOn}}} noch kahl? Dann neu säen.}}{isAlike, select, yes { Jetzt neu zu säen kostet etwa gleich viele Erntetage, und dazu Saatgut.} other {}}{moistUntilDate, select, none {} other { Bis zum {moistUntilDate} feucht halten.}}',
  'do.count': 'Zählen Sie, was aufgegangen ist, auch wenn es nichts ist. Ohne Zählung lässt sich nichts sagen.',
  'do.sow-again':
    '{sureness, select, lost {Verloren.} probably {Wahrscheinlich verloren ({lostRows} von {ofRows}).} other {Vielleicht verloren ({lostRows} von {ofRows}), aber die Zeit wird knapp.}} {from, select, none {Jetzt neu säen{by, select, none {} other {; der letzte gute Tag ist der {by}}}.} other {Ab dem {from} neu säen{by, select, none {} other {, bis zum {by}}}.}}{isAlike, select, yes { Warten kostet etwa gleich viele Erntetage, lässt aber weniger Zeit.} other {}}{moistUntilDate, select, none {} other { Diese Reihe trotzdem bis zum {moistUntilDate} feucht halten.}}',
  'do.fill-gaps':
    'Zu dünn. Füllen Sie die Lücken mit einer neuen Saat{from, select, none {{by, select, none {} other { bis zum {by}}}} other { ab dem {from}{by, select, none {} other {, bis zum {by}}}}}.',
  'do.nothing':
    '{why, select, stands {Die Reihe steht gut. Es ist nichts zu entscheiden.} other {In dieser Saison ist es zu spät, {crop} neu zu säen.{hasFitting, select, yes { Noch passen: {fitting}.} other {}}}}',
  'check.dry':
    '{moisture, select, rain {Dieses Beet bekommt nur Regen. Graben Sie bis zum Samen: Ist es dort feucht?} dry {Dieses Beet ist trocken. In trockener Erde wartet der Samen.} other {Graben Sie bis zum Samen: Ist es dort feucht?}}',
  'check.crust': 'Ist die Oberfläche verkrustet? Brechen Sie die Kruste vorsichtig, und halten Sie sie feucht.',
  'check.too-deep':
    'Der Samen liegt {depthCm} tief; üblich sind {usualCm}. Tiefe Keimlinge kommen spät, schwach oder gar nicht.',
  'check.old-seed':
    '{known, select, poor {Wenige dieser Samen keimen{germinationPercent, select, none {} other {: etwa {germinationPercent} von 100}}. Säen Sie neues Saatgut.} old {Dieses Saatgut ist älter, als es hält{storageYears, select, none {} other {: etwa {storageYears} Jahre}}. Prüfen Sie zehn Samen auf feuchtem Papier.} other {Wie alt ist das Saatgut?{storageYears, select, none {} other { Es hält etwa {storageYears} Jahre.}} Prüfen Sie zehn Samen auf feuchtem Papier.}}',
  'check.heat':
    'Die Erde war am Samen {hours, plural, one {# Stunde} other {# Stunden}} über {thresholdC}. Hitze hält diesen Samen zurück oder tötet ihn.',
  'check.cold': 'Am Samen hatte die Erde im Mittel {meanC}. Diese Kultur braucht mindestens {minimumC}.',
  'check.cold-spell':
    'Die Erde war am Samen {hours, plural, one {# Stunde} other {# Stunden}} unter {thresholdC}. Solche Kälte schadet diesem Samen, am meisten beim Quellen.',
  'check.eaten':
    '{beforeOn, select, none {Suchen Sie Schneckenspuren, Vogelspuren und Gänge, und abgebissene Triebe.} other {Am {beforeOn} {beforeSeedlings, plural, one {war ein Sämling} other {waren # Sämlinge}} aufgegangen. Suchen Sie Schneckenspuren, Vogelspuren und abgebissene oder umgefallene Sämlinge.}}',
  'news.sow-again':
    '{crop}, gesät am {sownOn} im Beet {bed}: {sureness, select, lost {verloren.} probably {wahrscheinlich verloren ({lostRows} von {ofRows}).} other {vielleicht verloren ({lostRows} von {ofRows}), aber die Zeit wird knapp.}} {from, select, none {Jetzt neu säen{by, select, none {} other {; der letzte gute Tag ist der {by}}}.} other {Ab dem {from} neu säen{by, select, none {} other {, bis zum {by}}}.}}{moistUntilDate, select, none {} other { Diese Reihe trotzdem bis zum {moistUntilDate} feucht halten.}}',
  'check.wrong-date':
    'Der {sownOn} ist ein schlechter Termin dafür: {goodPercent, plural, =0 {in keinem der vergangenen Jahre} one {in # von 100 vergangenen Jahren} other {in # von 100 vergangenen Jahren}} war er gut.',
  // answers/windows: reasons, other ways, and the verdict on a date.
  'reason.too-cold':
    'Der Boden ist zu kalt{meanC, select, none {} other { (etwa {meanC}; ab {minimumC} ist er warm genug)}}.',
  'reason.too-hot':
    'Boden über {thresholdC} hält den Samen {ofYears, plural, one {in dem Jahr} other {{of, select, dates {im Mittel } other {}}in {inYears, plural, one {#} other {#}} von # Jahren}} auf.',
  'reason.too-slow':
    'Die Saat geht {ofYears, plural, one {in dem Jahr} other {{of, select, dates {im Mittel } other {}}in {inYears, plural, one {#} other {#}} von # Jahren}} zu langsam auf: Die Hälfte sollte nach etwa {maxDays, plural, one {# Tag} other {# Tagen}} aufgegangen sein.',
  'reason.frost-to-come':
    'Frost von {frostC} oder darunter nimmt die Sämlinge {ofYears, plural, one {in dem Jahr} other {{of, select, dates {im Mittel } other {}}in {inYears, plural, one {#} other {#}} von # Jahren}}.',
  'reason.too-late':
    '{endsBy, select, frost {Frost beendet die Kultur vor der Ernte {ofYears, plural, one {in dem Jahr} other {{of, select, dates {im Mittel } other {}}in {inYears, plural, one {#} other {#}} von # Jahren}}{on, select, none {} other {, im mittleren davon am {on}}}.} other {Die Saison ist {ofYears, plural, one {in dem Jahr} other {{of, select, dates {im Mittel } other {}}in {inYears, plural, one {#} other {#}} von # Jahren}} zu kurz für eine Ernte.}}',
  'reason.heat-at-harvest':
    'Die Ernte fiele {ofYears, plural, one {in dem Jahr} other {{of, select, dates {im Mittel } other {}}in {inYears, plural, one {#} other {#}} von # Jahren}} in Hitze über {hotC}, die sie verdirbt.',
  'reason.bolts': 'Bei Tagen von mehr als {dayLengthH} Stunden schießt die Kultur: Ernten Sie sie klein.',
  'reason.over-winter': 'Die Kultur stünde über Winter und kann im Frühjahr schießen.',
  'reason.day-length':
    'Die Tage sind zu weit fortgeschritten: Vor der Zwiebel wachsen zu wenige Blätter. Säen Sie Winterheckenzwiebeln.',
  'reason.ground-wet':
    'Der Boden ist noch zu kalt und nass zum Bearbeiten. Drücken Sie eine Handvoll: Eine Kugel, die nicht zerfällt, ist zu nass.',
  'instead.wait': 'Warten Sie: Vom {from} bis {to} lohnt die Aussaat.',
  'instead.start-indoors':
    'Säen Sie vom {from} bis {to} in Schalen in einem Raum von {roomC}, und pflanzen Sie vom {plantOutFromDate} bis {plantOutToDate} aus.',
  'verdict-on-date.good': 'Ein guter Termin{harvestOn, select, none {} other {: Ernte ab etwa {harvestOn}}}.',
  'verdict-on-date.fair':
    'Zweite Wahl, {why, select, too_cold {denn der Boden ist kalt} too_hot {denn Hitze kann den Samen aufhalten} too_slow {denn die Saat geht langsam auf} frost_to_come {denn Frost kann die Sämlinge nehmen} too_late {denn die Ernte kann zu spät kommen} heat_at_harvest {denn die Ernte kann in die Hitze fallen} bolts {denn die Kultur kann schießen} day_length {denn die Tage sind zu weit fortgeschritten} ground_wet {denn der Boden kann zu nass sein} other {denn die Kultur steht über Winter}}{betterOn, select, none {} other {; besser am {betterOn}}}.',
  'verdict-on-date.poor':
    '{why, select, too_cold {Zu kalt zum Säen} too_hot {Zu heiß zum Säen} too_slow {Geht zu langsam auf} frost_to_come {Frost nähme die Sämlinge} too_late {Zu spät für eine Ernte} heat_at_harvest {Die Ernte fiele in die Hitze} bolts {Die Kultur würde schießen} day_length {Zu spät für Zwiebeln} ground_wet {Der Boden ist zu kalt und nass zum Bearbeiten} other {Die Kultur stünde über Winter}}{betterOn, select, none {} other {; besser am {betterOn}}}.',
  'harvest-judged':
    'Ein Termin ist in einem Jahr gut, wenn {sharePercent, plural, one {# %} other {# %}} dessen, was das Saatgut geben kann, nach {standDays, plural, one {# Tag} other {# Tagen}} aufgegangen sind, die Hälfte davon nach {halfDays, plural, one {# Tag} other {# Tagen}}, {ifHeldPercent, plural, one {# %} other {# %}} auch ohne zu lang aufgehaltenen Samen, und geerntet wird, ehe Frost, Hitze oder kurze Tage die Kultur beenden{years, plural, =0 { (in einem üblichen Jahr)} one {} other {}}. Das Wachstum und die Zeit, ab der sich der Boden bearbeiten lässt, folgen allein aus den Temperaturen: Wasser, Licht, Schädlinge und die Sorte ändern sie.',
  'harvest-not-judged':
    'Termine werden nur nach dem Aufgehen beurteilt: {why, select, crop {Von der Ernte der Kultur ist nichts bekannt} indoors {Was im Haus wächst, wird nicht beurteilt} other {Lufttemperaturen oder die Breite sind nicht bekannt}}.',
  // Sources by name, and what stands with a place's sources.
  'source.off':
    '{allowed, select, off {Dieser Dienst fragt so, wie er eingestellt ist, keine Quellen.} other {Dieser Dienst fragt so, wie er eingestellt ist, nur Quellen mit Namen.}}',
  'source.preset-unknown': 'Die Quelle „{preset}“ ist dieser Fassung des Dienstes nicht bekannt.',
  'source.contact':
    '{publisher} möchte wissen, an wen man schreiben kann. Der Betreiber setzt SOURCES_CONTACT auf eine Adresse, etwa garden@example.org.',
  'source.not-covered': '{publisher} hat für diesen Ort keine Vorhersage.',
  'preset.reads':
    '{preset, select, nasa_power {Vergangene Tage überall, von 1981 bis vor einigen Tagen, aus einer Reanalyse: Mittel von Zellen von 0,5 mal 0,625 Grad, auf der mittleren Höhe der Zelle.} open_meteo_archive {Vergangene Tage überall, dreißig Jahre zurück und bis vor einigen Tagen, aus einer Reanalyse, auf die Höhe des Ortes gebracht.} open_meteo_forecast {Die 7 kommenden Tage, überall.} met_norway {Etwa 9 kommende Tage, überall.} other {Die 7 kommenden Tage, in den Vereinigten Staaten.}}',
  'preset.consequence':
    '{preset, select, nasa_power {Kostenlos. Der Herausgeber bittet, genannt zu werden.} open_meteo_archive {Ohne Schlüssel kostenlos für nichtkommerzielle Zwecke, bis 10.000 Abfragen am Tag; zwei Wochen an Tagen sind eine Abfrage. Die Quelle ist mit einem Link zu nennen.} open_meteo_forecast {Ohne Schlüssel kostenlos für nichtkommerzielle Zwecke, bis 10.000 Abfragen am Tag. Die Quelle ist mit einem Link zu nennen.} met_norway {Kostenlos. Die Quelle ist zu nennen, und jede Abfrage braucht eine Kontaktadresse.} other {Offene Daten, frei für jeden Zweck. Jede Abfrage braucht eine Kontaktadresse.}}',
  attribution:
    '{preset, select, nasa_power {Vergangene Lufttemperaturen vom POWER-Projekt des NASA Langley Research Center; wir rechnen damit weiter.} open_meteo_archive {Vergangene Lufttemperaturen von Open-Meteo.com; wir rechnen damit weiter.} open_meteo_forecast {Wettervorhersage von Open-Meteo.com; wir rechnen damit weiter.} met_norway {Wettervorhersage von MET Norway; wir rechnen damit weiter.} other {Wettervorhersage des U.S. National Weather Service; wir rechnen damit weiter.}}',
  reanalysis:
    'Die vergangenen Tage von {preset, select, nasa_power {NASA POWER} other {Open-Meteo}} stammen aus einem Modell und gelten für eine ganze Zelle seines Gitters, nicht von einem Thermometer. Frostmulden, Städte und Hänge weichen ab: Ergänzen Sie Tage einer Station in der Nähe, wo Sie welche haben.',
  'unknown-preset': 'Keine Quelle heißt „{preset}“. GET /v1/source-presets nennt alle.',
  'unknown-preset.field': 'muss der Name einer Quelle sein',
  'contact-needed':
    '{publisher} möchte wissen, an wen man schreiben kann, und dieser Dienst nennt niemanden. Sein Betreiber setzt SOURCES_CONTACT auf eine Adresse; andere Quellen brauchen keine.',
  'contact-needed.field': 'braucht SOURCES_CONTACT, das der Betreiber setzt',
  'private-address':
    '{host} liegt auf diesem Rechner oder in seinem eigenen Netz, und dort fragt der Dienst nichts. Nennen Sie eine öffentliche Adresse; der Betreiber kann mit ALLOW_PRIVATE_SOURCES=1 andere zulassen.',
  'private-address.field':
    'muss eine Adresse sein, die andere erreichen; {host} gehört zu diesem Rechner oder ist privat',
  'no-source':
    '{why, select, none {Für den Ort „{place}“ wird nichts gefragt: Er hat keine Quelle. Senden Sie ihm eine mit PATCH als „source“, etwa das preset nasa-power.} off {Dieser Dienst fragt so, wie er eingestellt ist, keine Quellen, also auch keine für den Ort „{place}“.} other {Dieser Dienst fragt so, wie er eingestellt ist, nur Quellen mit Namen, und der Ort „{place}“ hat keine davon. GET /v1/source-presets nennt sie.}}',
  'too-soon':
    'Die Quellen dieses Ortes wurden in den letzten {minutes} Minuten gefragt oder bitten um Ruhe. Fragen Sie in {waitS, plural, one {einer Sekunde} other {# Sekunden}} wieder.',
  'title.unknown-preset': 'Keine Quelle dieses Namens',
  'cause.unknown-preset': 'Es ist eine Quelle genannt, die dieser Dienst nicht kennt.',
  'cure.unknown-preset': 'Senden Sie einen der Namen unter „choices“; GET /v1/source-presets sagt, was jede gibt.',
  'title.contact-needed': 'Der Herausgeber möchte eine Kontaktadresse',
  'cause.contact-needed':
    'Dieser Herausgeber bittet, dass jede Abfrage jemanden nennt, an den man schreiben kann, und der Dienst nennt niemanden.',
  'cure.contact-needed':
    'Der Betreiber setzt SOURCES_CONTACT, etwa auf garden@example.org. Oder nennen Sie eine andere Quelle.',
  'title.private-address': 'Diese Adresse ist nicht öffentlich',
  'cause.private-address':
    'Eine Quelle liegt auf dem Rechner oder im Netz des Dienstes, und dort zu fragen ließe andere hineinsehen.',
  'cure.private-address':
    'Senden Sie eine öffentliche Adresse. Wer den Dienst zu Hause betreibt, kann ALLOW_PRIVATE_SOURCES=1 setzen.',
  'title.no-source': 'Es gibt keine Quelle zu fragen',
  'cause.no-source': 'Der Ort hat keine Quelle, oder der Dienst fragt so, wie er eingestellt ist, keine von ihnen.',
  'cure.no-source': 'Geben Sie dem Ort eine Quelle, oder senden Sie seine Luft an /v1/places/…/air.',
  'title.too-soon': 'Eben erst gefragt',
  'cause.too-soon': 'Die Quellen des Ortes wurden eben gefragt, oder ihre Herausgeber bitten zu warten.',
  'cure.too-soon': 'Warten Sie so viele Sekunden, wie Retry-After sagt; der Dienst fragt auch von selbst.',
  // answers: this week
  'week.sow':
    '{method, select, direct {{crop}: am {date} säen} other {{crop}: am {date} in Schalen säen, in einem Raum von {roomC}; auspflanzen um den {plantOutDate}}}{grade, select, fair {, zweite Wahl} other {}}.{lastCall, select, yes { Der letzte gute Tag ist der {untilDate}.} other {}}{harvestFromDate, select, none {} other { Ernte etwa vom {harvestFromDate} bis zum {harvestToDate}.}}',
  'week.plant-out':
    '{crop}: vom {from} bis zum {to} auspflanzen, vorher abhärten; achten Sie auf die Vorhersage der Nächte.',
  'ahead.frost':
    'Frost ist vorhergesagt: {nights, plural, one {eine Nacht, {from},} other {# Nächte vom {from} bis zum {to},}} bis {minC}. Decken Sie ab, was keinen Frost verträgt; in Senken ist es kälter als vorhergesagt.',
  'ahead.hot-spell':
    '{crop}: Hitze ist vorhergesagt, vom {from} bis zum {to} bis zu {peakC} an der Saat; über {thresholdC} hält Hitze sie auf. Schatten und Wasser helfen; beachten Sie die örtlichen Regeln zum Gießen.',
  // answers/climate: a place of which no years are known.
  'rain-rules':
    'In den Tropen macht der Regen die Jahreszeiten, und von ihm ist hier nichts bekannt: weder wann er kommt, noch von Fluten, Dürre und Schädlingen. Die Termine folgen allein der Wärme. Fragen Sie Leute, die in der Nähe anbauen.',
  'typical-years':
    '{about, select, plan {Der Plan folgt daraus, was jede Saat in {years, plural, one {# typischen Jahr} other {# typischen Jahren}} dieses Klimas ergäbe; eine Woche gilt als erreicht, wo sie es in der Hälfte von ihnen oder öfter ist.} windows {Jeder Tag ist danach beurteilt, was die Saat in {years, plural, one {# typischen Jahr} other {# typischen Jahren}} dieses Klimas täte: Regen, Dürre und Schädlinge bleiben außen vor.} other {Nach dem {lastDate} geht der Boden so weiter wie in {years, plural, one {# typischen Jahr} other {jedem von # typischen Jahren}} dieses Klimas. Die Daten sind deren Mitte; die Tage zeigen ihr Mittel, in dem einzelne heiße und kalte Tage geglättet sind.}}',
  'climate-table':
    'Von diesem Ort sind keine Jahre der Luft bekannt: Dafür {typicalYears, plural, one {steht # typisches Jahr} other {stehen # typische Jahre}} aus dem Klima naher Wetterstationen (vor allem {station}, {stationKm} km entfernt). Das Mittel eines Monats kann um {plusMinusK} abweichen, der erste und letzte Termin eines Fensters um {plusMinusDays, plural, one {# Tag} other {# Tage}}{elevationM, select, none {, zwischen Hügeln um mehr, denn die Höhe des Ortes ist nicht bekannt} other { (für eine Höhe von {elevationM} m)}}. Eigene Jahre der Luft sind immer besser.',
  'climate-own-air':
    '{days, plural, one {# Tag} other {# Tage}} Ihrer eigenen Luft haben die typischen Jahre zu dem verschoben, was Sie gemessen haben.',
  'frost-date-told':
    'Alle Nächte sind um {movedK} {direction, select, colder {kälter} other {wärmer}} angenommen, denn Sie kennen den {side, select, spring {letzten Frost des Frühjahrs} other {ersten Frost des Herbstes}} um den {aroundOn}{untunedOn, select, none {} other { statt um den {untunedOn}}}.',
  'climate-far':
    'Die nächste Wetterstation ist {stationKm} km entfernt, und die dem Ort ähnlichste liegt {heightM} m höher oder tiefer: Nehmen Sie dieses Klima als grobe Schätzung.',
  'frost-date-far':
    'Sie kennen den {side, select, spring {letzten Frost des Frühjahrs} other {ersten Frost des Herbstes}} um den {aroundOn}{untunedOn, select, none {, nahe Stationen haben kaum einen} other {; nahe Stationen haben ihn um den {untunedOn}}}. Dazu müssten die Nächte um {shiftK} abweichen, mehr als in einer Frostmulde oder Stadt üblich: Prüfen Sie Datum und Ort.',
  'frost-date-unused':
    'Nahe Stationen haben nie Frost, daher ändert der {side, select, spring {letzte Frost des Frühjahrs} other {erste Frost des Herbstes}} um den {aroundOn} nichts.',
  'zone-against-longitude':
    'Die Uhr von {timeZone} geht bei der Länge {longitude} um mehr als drei Stunden anders als die Sonne. Fehlt ein Minus, oder ist eines zu viel, senden Sie {mirroredLongitude}.',
  'no-climate-near':
    'Die nächste Wetterstation mit bekanntem Klima ist {nearestKm} km entfernt, und bis {maxKm} km wird ein Klima genannt. Senden Sie die Luft von drei oder mehr Jahren oder Monatsnormale.',
  'no-climate-near.field': 'liegt zu weit von allen Stationen der Klimatabelle entfernt',
  'not-understood.frost-date-far':
    'kann nicht stimmen: Für {side, select, spring {einen letzten Frost des Frühjahrs} other {einen ersten Frost des Herbstes}} um den {aroundOn} müssten die Nächte um mehr als {maxShiftK} von denen naher Stationen abweichen{untunedOn, select, none {, die kaum einen haben} other {, die ihn um den {untunedOn} haben}}. Prüfen Sie das Datum, MM-TT, und den Ort',
  'field.month-day': `${MISSING}muss ein Monat und Tag wie 05-20 sein${WAS}`,
  'title.no-climate-near': 'Nahe dem Ort ist kein Klima bekannt',
  'cause.no-climate-near':
    'Von dem Ort sind keine Jahre der Luft bekannt, und alle Stationen der eigenen Klimatabelle liegen zu weit entfernt.',
  'cure.no-climate-near':
    'Prüfen Sie Breite und Länge. Stimmen sie, senden Sie die Luft von drei oder mehr Jahren, nach Tagen, oder Monatsnormale.',
  // localities
  locality:
    'Wir nehmen {near}. {others, plural, one {# kleinerer Ort heißt} other {# kleinere Orte heißen}} auch so: Nennen Sie für einen anderen die Region.',
  'choose-locality': '{places, plural, one {# Ort heißt} other {# Orte heißen}} „{name}“, und keiner ist viel größer.',
  'choose-locality.send':
    'Senden Sie eine der Möglichkeiten, oder nennen Sie Region und Land dazu, etwa „Portland, Maine, US“.',
  'choose-locality.choice.reads': '{latitude} / {longitude}{people, select, none {} other {; {people} Einwohner}}',
  'choose-locality.choice.consequence':
    '{frost, select, never {in üblichen Jahren kein Frost} in_spring {letzter Frost um den {lastFrostOn, select, none {} other {{lastFrostOn}}}} other {Zeitzone {timeZone}}}',
  'unknown-locality': 'Wir kennen keinen Ort namens „{name}“.',
  'unknown-locality.alike':
    'Senden Sie eine der Möglichkeiten, wenn Sie sie meinten, einen größeren Ort in der Nähe, oder Breite und Länge.',
  'unknown-locality.send': 'Senden Sie einen größeren Ort in der Nähe, oder Breite und Länge.',
  'not-understood.locality-question':
    '{fault, select, missing {fehlt} other {kann nicht neben `latitude` oder `longitude` stehen}}: Senden Sie `q` mit einem Namen, oder `latitude` und `longitude`.',
  'field.country': `${MISSING}muss ein Land in zwei Buchstaben sein, etwa US${WAS}`,
  'title.choose-locality': 'Welcher Ort?',
  'cause.choose-locality': 'Mehrere Orte heißen so, und keiner ist viel größer als die anderen.',
  'cure.choose-locality': 'Senden Sie „near“ mit einer der Möglichkeiten.',
  'title.unknown-locality': 'Diesen Ort kennen wir nicht',
  'cause.unknown-locality': 'Er fehlt in der Liste der Orte ab 500 Einwohnern.',
  'cure.unknown-locality': 'Senden Sie „near“ mit einem größeren Ort in der Nähe, oder Breite und Länge.',
  // garden/plan: Termine, beurteilt wie in Saatfenstern.
  'harvest-in-years':
    'Wann eine Saat reif ist, folgt wie bei den Saatfenstern aus der Wärme jedes vergangenen Jahres, für mittlere Sorten. Geerntet wird sie von da an {pickDays, plural, one {# Tag} other {# Tage}} lang, oder bis zum Frost; das ist die Ernte von {weeks, plural, one {einer Woche} other {# Wochen}} (übliche Praxis, ohne Quelle).',
  'dates-graded':
    'Gesät wird an Terminen, die die Saatfenster für dieses Beet gut oder zweite Wahl nennen. Wo das nicht so ist, nennt der Plan den Schatten oder die Schale, auf die es ankommt.',
  // answers/windows: was am Beet zu tun wäre.
  'instead.keep-wet':
    'Das Saatbeet bis zum Aufgehen {moisture, select, moist {feucht} other {nass}} halten: Dann ist vom {from} bis zum {to} {grade, select, good {gut zu säen} other {zweite Wahl}}. Oft und sparsam gießen, wo es erlaubt ist. Errechnet, nicht in einem Saatbeet gemessen.',
  'instead.shade':
    'Die Reihe bis zum Aufgehen halb beschatten: Dann ist vom {from} bis zum {to} {grade, select, good {gut zu säen} other {zweite Wahl}}. Errechnet, nicht in einem Saatbeet gemessen.',
  'instead.cover':
    'Zwei Wochen vorher schwarze Folie auslegen und durch Löcher darin säen: Dann ist vom {from} bis zum {to} {grade, select, good {gut zu säen} other {zweite Wahl}}. Errechnet, nicht in einem Saatbeet gemessen; gegen Frost hilft es nicht.',
} as const satisfies Catalogue;
