/**
 * Words that stand in dates and times of day, in lower case. Accents are dropped before the look-up, on both sides.
 * Sources: the date patterns of the Unicode Common Locale Data Repository for the names; common practice for the rest.
 */

/** January to December: English, German, French, Spanish, Italian, Dutch, Nordic, Finnish, Polish, Czech, Portuguese. */
export const monthWords: readonly string[] = [
  'january jan januar jänner janvier janv enero ene gennaio gen januari tammikuu tammikuuta tammi styczeń stycznia sty leden ledna led janeiro',
  'february feb febr februar feber février févr fév febrero febbraio februari helmikuu helmikuuta helmi luty lutego lut únor února úno fevereiro fev',
  'march mar märz mär mrz maerz mars marzo maart mrt marts maaliskuu maaliskuuta maalis marzec marca březen března bře março',
  'april apr avril avr abril abr aprile huhtikuu huhtikuuta huhti kwiecień kwietnia kwi duben dubna dub',
  'may mai mayo maggio mag mei maj toukokuu toukokuuta touko maja květen května kvě maio',
  'june jun juni juin junio giugno giu kesäkuu kesäkuuta kesä czerwiec czerwca cze červen června čvn junho',
  'july jul juli juillet juil julio luglio lug heinäkuu heinäkuuta heinä lipiec lipca lip červenec července čvc julho',
  'august aug août agosto ago augustus augusti elokuu elokuuta elo sierpień sierpnia sie srpen srpna srp',
  'september sep sept septembre septiembre setiembre set settembre syyskuu syyskuuta syys wrzesień września wrz září zář setembro',
  'october oct oktober okt octobre octubre ottobre ott lokakuu lokakuuta loka październik października paź říjen října říj outubro out',
  'november nov novembre noviembre marraskuu marraskuuta marras listopad listopada listopadu lis novembro',
  'december dec dezember dez décembre déc diciembre dic dicembre desember des joulukuu joulukuuta joulu grudzień grudnia gru prosinec prosince pro dezembro',
];

/** March, but Tuesday too. */
export const marchOrTuesday = 'mar';

/** Days of the week and small words between the parts: they say nothing of the instant. */
export const idleWords =
  'monday tuesday wednesday thursday friday saturday sunday mon tue tues wed thu thur thurs fri sat sun ' +
  'montag dienstag mittwoch donnerstag freitag samstag sonnabend sonntag mo di mi do fr sa so ' +
  'lundi mardi mercredi jeudi vendredi samedi dimanche lun mer jeu ven sam dim ' +
  'lunes martes miércoles jueves viernes sábado domingo mié jue vie sáb dom ' +
  'lunedì martedì mercoledì giovedì venerdì sabato domenica gio ' +
  'maandag dinsdag woensdag donderdag vrijdag zaterdag zondag ma wo vr za zo ' +
  'måndag tisdag onsdag torsdag fredag lördag söndag mandag tirsdag lørdag søndag mån man tis tir ons tor tors fre lör lør sön søn ' +
  'maanantai tiistai keskiviikko torstai perjantai lauantai sunnuntai ti ke to pe la su ' +
  'poniedziałek wtorek środa czwartek piątek sobota niedziela pon wt śr czw pt sob nd niedz ' +
  'pondělí úterý středa čtvrtek pátek neděle po út st čt pá ne ' +
  'segunda terça quarta quinta sexta feira seg ter qua qui sex ' +
  't at of the rd th er klo kello kl uhr um den der le el il las los del as à alle ore ora heures horas hrs hs om uur godz hod dne º';

/** Before noon, and after. */
export const morningWords = 'am vorm vormittag vormittags fm πμ πµ 上午 午前 오전 vm dop ap';
export const afternoonWords = 'pm nachm nachmittag nachmittags em μμ µµ 下午 午後 오후 nm odp ip du';

/** Hungarian before noon, which is "of" in Spanish and Portuguese. */
export const morningOrOf = 'de';

/** First letters of dotted or cut words for before and after noon: `a.m.`, `p. m.`, `π.μ.`, `12:30a`. */
export const morningLetters = 'aπf';
export const afternoonLetters = 'pμµe';
export const noonLetters = 'mμµ';

/** Marks of an hour or minute before the next number, as in `10h30`, 10時05分. */
export const timeMarks = 'hu時时分시분點点';

/** Marks behind a year, month, day or second. */
export const dateMarks = '年月日년월일秒초';

/** Universal time. */
export const universalWords = 'utc gmt z zulu ut';

/** Names of offsets; several mean more than one, so none is taken as proof. */
export const zoneWords =
  'cet cest met mest mez mesz wet west eet eest msk bst ist est edt cst cdt mst mdt pst pdt akst akdt hst ast adt nst ndt ' +
  'aest aedt acst acdt awst nzst nzdt jst kst sgt hkt sast wat cat eat brt art clt clst';
