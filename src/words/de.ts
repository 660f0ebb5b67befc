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
  lot: 'Es wurde keine Keimprobe angegeben; angenommen ist Saatgut so gut wie das der Tabelle. Bei alten Päckchen zehn Samen auf feuchtem Papier prüfen.',
  normals:
    '{about, select, windows {Vergangene Jahre sind nicht bekannt: Jeder Tag ist nach einem üblichen Jahr beurteilt, das die Mittelwerte des Ortes ergeben und in dem kein Tag aus der Reihe fällt. Wie oft er misslingt, ist nicht zu sagen.} other {Nach dem letzten Wert vom {lastDate} geht der Boden, von seinem heutigen Stand aus, so weiter, wie ihn die Mittelwerte des Ortes in einem üblichen Jahr ergeben: Vergangene Jahre sind nicht bekannt. Die Spannen sind deshalb weit.}}',
  'past-years':
    '{about, select, windows {Jeder Tag ist danach beurteilt, was die Saat in {years, plural, one {# vergangenen Jahr} other {# vergangenen Jahren}} getan hätte, und jedes zählt etwa gleich: Regen, Schädlinge und ob sich der Boden bearbeiten lässt, bleiben außen vor.} other {Nach dem letzten Wert vom {lastDate} geht der Boden, von seinem heutigen Stand aus, so weiter wie in {years, plural, one {# vergangenen Jahr} other {jedem von # vergangenen Jahren}}. Die Daten sind deren Mitte; die Tage zeigen ihr Mittel, in dem einzelne heiße und kalte Tage geglättet sind.}}',
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
    '{about, select, cold {{freeDate, select, none {Warten Sie auf wärmeren Boden: Diese Temperaturen reichen bis zum {lookedToDate}, und bis dahin ist keine spätere Saat zu sehen, die ohne solche Kälte aufgeht.} other {Warten Sie: Eine Saat am {freeDate} liegt, soweit diese Temperaturen zeigen, über {thresholdC}, bis das meiste aufgegangen ist.}}} other {{freeDate, select, none {Ob Warten hilft, ist nicht abzusehen: Diese Temperaturen reichen bis zum {lookedToDate}, und bis dahin ist keine spätere Saat zu sehen, die ohne solche Hitze aufgeht.} other {Warten Sie: Eine Saat am {freeDate} trifft, soweit diese Temperaturen zeigen, auf keine solche Hitze, bis das meiste aufgegangen ist.}}}}',
  'action.start-indoors':
    '{about, select, cold {Ziehen Sie die Saat im Warmen in Töpfen vor, und pflanzen Sie aus, wenn der Boden warm ist; betreiben Sie Heizgeräte nur nach Anleitung.} other {Ziehen Sie die Saat in einer Schale in einem kühlen Raum vor, Tag und Nacht unter {thresholdC}, und pflanzen Sie aus, was das Umsetzen verträgt.}}',
  'action.presprout-cool':
    'Lassen Sie die Saat auf feuchtem Papier kühl ankeimen, bei etwa {fromC} bis {toC}, bis die ersten Wurzelspitzen zu sehen sind, und säen Sie sie abends in feuchten Boden: Angekeimte Saat hält Hitze nicht so leicht auf. Bei gebeiztem Saatgut Handschuhe tragen und das Etikett beachten.',
  'action.presprout-warm':
    'Lassen Sie die Saat auf feuchtem Papier im Warmen ankeimen, bei etwa {fromC} bis {toC}, und säen Sie sie in Boden über {thresholdC}: Kälte schadet am meisten, solange die Saat das erste Wasser aufnimmt. Bei gebeiztem Saatgut Handschuhe tragen und das Etikett beachten.',

  // Sowing windows and frost dates, from src/answers/windows.
  'good-date':
    'Ein Tag ist in einem Jahr gut, wenn binnen {maxDays, plural, one {# Tag} other {# Tagen}} {sharePercent, plural, one {# %} other {# %}} dessen aufgeht, was das Saatgut geben kann, {ifHeldPercent, plural, one {# %} other {# %}} auch ohne Saat, die Hitze oder Kälte zu lange aufhält{frost, select, tender {, und wenn nach dem ersten Sämling {frostFreeDays, plural, one {# Tag} other {# Tage}} lang kein Frost kommt} tender_planted_out {, und wenn nach dem ersten Sämling {frostFreeDays, plural, one {# Tag} other {# Tage}} lang kein Frost kommt; späterer zählt nicht, da die Ernte nicht von der Saat an zählt} half_hardy {, und wenn es nach dem ersten Sämling {frostFreeDays, plural, one {# Tag} other {# Tage}} lang nicht kälter als {frostC} wird} other {}}.',
  'thin-years':
    '{years, plural, one {# Jahr ist} other {# Jahre sind}} wenig: Die Enden der Zeiten können eine Woche danebenliegen.',
  'frost-unknown':
    'Ohne Lufttemperaturen ist Frost nicht zu erkennen: Die Zeiten berücksichtigen ihn nicht. Senden Sie die täglichen Tiefstwerte der Luft.',
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
    '{crop, select, beet {Zwei bis drei Wochen unter {belowC}, wenn die Pflanzen schon mehrere Laubblätter haben, können sie schießen lassen, statt Rüben zu bilden. Eilen Sie nicht mit der ersten Saat.} celery {Kälte lässt junge Pflanzen schießen; Wärme bei der Anzucht hielt das zurück. Ersparen Sie ihnen zehn oder mehr Nächte unter etwa {belowC}.} other {Kälte unter etwa {belowC} lässt Pflanzen schießen, die schon dick sind: ab etwa sieben Blättern, die noch verborgenen mitgezählt, bei einer Frühjahrssorte, ab zehn bei einer Herbstsorte. Steckzwiebeln sind von Anfang an dick: Stecken Sie kleine.}}',
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

  // What crops are called within a sentence.
  'crop.asparagus': 'Spargel',
  'crop.beet': 'Rote Bete',
  'crop.bunching-onion': 'Winterheckenzwiebel',
  'crop.cabbage': 'Kopfkohl',
  'crop.carrot': 'Möhre',
  'crop.cauliflower': 'Blumenkohl',
  'crop.celery': 'Stangensellerie',
  'crop.cucumber': 'Gurke',
  'crop.eggplant': 'Aubergine',
  'crop.lettuce': 'Kopfsalat',
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
    '{reason, select, too_cold {zu kalt} too_hot {zu heiß} too_slow {zu langsam} other {Frost kommt noch}}{dates, select, none {} other { {dates}}}',
  'picture.closed-dates':
    'Geschlossen, {reason, select, too_cold {zu kalt} too_hot {zu heiß} too_slow {zu langsam} other {Frost kommt noch}}: {dates}.',
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
} as const satisfies Catalogue;
