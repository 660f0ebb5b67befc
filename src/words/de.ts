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
    'Nach dem letzten Wert vom {lastDate} geht der Boden, von seinem heutigen Stand aus, so weiter, wie ihn die Mittelwerte des Ortes in einem üblichen Jahr ergeben: Vergangene Jahre sind nicht bekannt. Die Spannen sind deshalb weit.',
  'past-years':
    'Nach dem letzten Wert vom {lastDate} geht der Boden, von seinem heutigen Stand aus, so weiter wie in {years, plural, one {# vergangenen Jahr} other {jedem von # vergangenen Jahren}}. Die Daten sind deren Mitte; die Tage zeigen ihr Mittel, in dem einzelne heiße und kalte Tage geglättet sind.',
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
} as const satisfies Catalogue;
