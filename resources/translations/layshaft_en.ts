<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en" sourcelanguage="en_GB">
<context>
    <name>AimWords</name>
    <message numerus="yes">
        <source>%n more are left out.</source>
        <translation>
            <numerusform>One more is left out.</numerusform>
            <numerusform>%n more are left out.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ChainLabels</name>
    <message numerus="yes">
        <source>Belt of %n teeth</source>
        <translation>
            <numerusform>Belt of %n tooth</numerusform>
            <numerusform>Belt of %n teeth</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n links</source>
        <translation>
            <numerusform>%n link</numerusform>
            <numerusform>%n links</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Belt of %n teeth (stock %1)</source>
        <translation>
            <numerusform>Belt of %n tooth (stock %1)</numerusform>
            <numerusform>Belt of %n teeth (stock %1)</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n links (stock %1)</source>
        <translation>
            <numerusform>%n link (stock %1)</numerusform>
            <numerusform>%n links (stock %1)</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n teeth</source>
        <translation>
            <numerusform>%n tooth</numerusform>
            <numerusform>%n teeth</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n teeth (stock %1)</source>
        <translation>
            <numerusform>%n tooth (stock %1)</numerusform>
            <numerusform>%n teeth (stock %1)</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>ChainWords</name>
    <message numerus="yes">
        <source>this chain, %n links taken out</source>
        <translation>
            <numerusform>this chain, %n link taken out</numerusform>
            <numerusform>this chain, %n links taken out</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>a belt of %n teeth</source>
        <translation>
            <numerusform>a belt of %n tooth</numerusform>
            <numerusform>a belt of %n teeth</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n links</source>
        <translation>
            <numerusform>%n link</numerusform>
            <numerusform>%n links</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>with %n teeth</source>
        <translation>
            <numerusform>with %n tooth</numerusform>
            <numerusform>with %n teeth</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>with %n links</source>
        <translation>
            <numerusform>with %n link</numerusform>
            <numerusform>with %n links</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>the %1-link chain in the spares box, %n links taken out</source>
        <extracomment>%1 is the number of links of a chain</extracomment>
        <translation>
            <numerusform>the %1-link chain in the spares box, %n link taken out</numerusform>
            <numerusform>the %1-link chain in the spares box, %n links taken out</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n links, an odd number</source>
        <translation>
            <numerusform>%n link, an odd number</numerusform>
            <numerusform>%n links, an odd number</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>CounterWords</name>
    <message numerus="yes">
        <source>Fits with a belt of %n teeth</source>
        <translation>
            <numerusform>Fits with a belt of %n tooth</numerusform>
            <numerusform>Fits with a belt of %n teeth</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Fits with a chain of %n links</source>
        <translation>
            <numerusform>Fits with a chain of %n link</numerusform>
            <numerusform>Fits with a chain of %n links</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>GearboxWords</name>
    <message numerus="yes">
        <source>The gears on hand make %n gearboxes, the one that is in among them.</source>
        <translation>
            <numerusform>The gears on hand make %n gearbox, the one that is in.</numerusform>
            <numerusform>The gears on hand make %n gearboxes, the one that is in among them.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>PairLapsWords</name>
    <message numerus="yes">
        <source>fits with %n teeth</source>
        <comment>a belt</comment>
        <translation>
            <numerusform>fits with %n tooth</numerusform>
            <numerusform>fits with %n teeth</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>fits with %n links</source>
        <comment>a chain</comment>
        <translation>
            <numerusform>fits with %n link</numerusform>
            <numerusform>fits with %n links</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 and %n more are equal to it.</source>
        <comment>pairs</comment>
        <translation>
            <numerusform>%1 and one more are equal to it.</numerusform>
            <numerusform>%1 and %n more are equal to it.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 would be %2 s quicker still, with a belt of %n teeth.</source>
        <comment>a pair and seconds</comment>
        <translation>
            <numerusform>%1 would be %2 s quicker still, with a belt of %n tooth.</numerusform>
            <numerusform>%1 would be %2 s quicker still, with a belt of %n teeth.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 would be %2 s quicker still, with %n links.</source>
        <comment>a pair and seconds</comment>
        <translation>
            <numerusform>%1 would be %2 s quicker still, with %n link.</numerusform>
            <numerusform>%1 would be %2 s quicker still, with %n links.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>PartsWords</name>
    <message numerus="yes">
        <source>%n teeth</source>
        <translation>
            <numerusform>%n tooth</numerusform>
            <numerusform>%n teeth</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n links</source>
        <translation>
            <numerusform>%n link</numerusform>
            <numerusform>%n links</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>take %n links out of the bike&apos;s chain</source>
        <translation>
            <numerusform>take %n link out of the bike's chain</numerusform>
            <numerusform>take %n links out of the bike's chain</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>take %n links out</source>
        <translation>
            <numerusform>take %n link out</numerusform>
            <numerusform>take %n links out</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>RecordEdits</name>
    <message numerus="yes">
        <source>%n records read</source>
        <translation>
            <numerusform>%n record read</numerusform>
            <numerusform>%n records read</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>RecordWords</name>
    <message numerus="yes">
        <source>%1 over %n links</source>
        <translation>
            <numerusform>%1 over %n link</numerusform>
            <numerusform>%1 over %n links</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n links</source>
        <translation>
            <numerusform>%n link</numerusform>
            <numerusform>%n links</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>belt of %n teeth</source>
        <translation>
            <numerusform>belt of %n tooth</numerusform>
            <numerusform>belt of %n teeth</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n entries were added.</source>
        <translation>
            <numerusform>%n entry was added.</numerusform>
            <numerusform>%n entries were added.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n were there already.</source>
        <translation>
            <numerusform>%n was there already.</numerusform>
            <numerusform>%n were there already.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>RoadWords</name>
    <message numerus="yes">
        <source>%1 to %2, %n shifts</source>
        <translation>
            <numerusform>%1 to %2, %n shift</numerusform>
            <numerusform>%1 to %2, %n shifts</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>starts in %1, %n shifts</source>
        <translation>
            <numerusform>starts in %1, %n shift</numerusform>
            <numerusform>starts in %1, %n shifts</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SeasonWords</name>
    <message numerus="yes">
        <source>%1 for the %n tracks loses %2 s over a lap of each.</source>
        <comment>pair, seconds</comment>
        <translation>
            <numerusform>%1 for %n track loses %2 s over a lap of it.</numerusform>
            <numerusform>%1 for the %n tracks loses %2 s over a lap of each.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n sprockets</source>
        <comment>that are changed</comment>
        <translation>
            <numerusform>%n sprocket</numerusform>
            <numerusform>%n sprockets</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n pulleys</source>
        <comment>that are changed</comment>
        <translation>
            <numerusform>%n pulley</numerusform>
            <numerusform>%n pulleys</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>the chain %n times</source>
        <translation>
            <numerusform>the chain once</numerusform>
            <numerusform>the chain %n times</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>the belt %n times</source>
        <translation>
            <numerusform>the belt once</numerusform>
            <numerusform>the belt %n times</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SegmentRows</name>
    <message numerus="yes">
        <source>%n cells that stand under no column were passed over.</source>
        <translation>
            <numerusform>%n cell that stands under no column was passed over.</numerusform>
            <numerusform>%n cells that stand under no column were passed over.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SetupEdits</name>
    <message numerus="yes">
        <source>There are %n pins already; remove one first.</source>
        <translation>
            <numerusform>There is %n pin already; remove it first.</numerusform>
            <numerusform>There are %n pins already; remove one first.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>Summary</name>
    <message numerus="yes">
        <source>%n gears instead of %1.</source>
        <translation>
            <numerusform>%n gear instead of %1.</numerusform>
            <numerusform>%n gears instead of %1.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>chain of %n links</source>
        <translation>
            <numerusform>chain of %n link</numerusform>
            <numerusform>chain of %n links</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Shorter (geared down) by %1 %, %2: about as much as %n more teeth at the rear.</source>
        <comment>%2 is &quot;a small step&quot;</comment>
        <translation>
            <numerusform>Shorter (geared down) by %1 %, %2: about as much as one more tooth at the rear.</numerusform>
            <numerusform>Shorter (geared down) by %1 %, %2: about as much as %n more teeth at the rear.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Taller (geared up) by %1 %, %2: about as much as %n teeth fewer at the rear.</source>
        <comment>%2 is &quot;a small step&quot;</comment>
        <translation>
            <numerusform>Taller (geared up) by %1 %, %2: about as much as one tooth fewer at the rear.</numerusform>
            <numerusform>Taller (geared up) by %1 %, %2: about as much as %n teeth fewer at the rear.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TrackListEdits</name>
    <message numerus="yes">
        <source>%n new tracks</source>
        <translation>
            <numerusform>%n new track</numerusform>
            <numerusform>%n new tracks</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>TrackWords</name>
    <message numerus="yes">
        <source>%n points before and after the lap</source>
        <translation>
            <numerusform>%n point before or after the lap</numerusform>
            <numerusform>%n points before and after the lap</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n without a position</source>
        <translation>
            <numerusform>%n without a position</numerusform>
            <numerusform>%n without a position</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n damaged lines</source>
        <translation>
            <numerusform>%n damaged line</numerusform>
            <numerusform>%n damaged lines</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n repeated points</source>
        <translation>
            <numerusform>%n repeated point</numerusform>
            <numerusform>%n repeated points</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n where the bike stood</source>
        <translation>
            <numerusform>%n where the bike stood</numerusform>
            <numerusform>%n where the bike stood</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n leaps</source>
        <translation>
            <numerusform>%n leap</numerusform>
            <numerusform>%n leaps</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n stretches of %1</source>
        <translation>
            <numerusform>%n stretch of %1</numerusform>
            <numerusform>%n stretches of %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>WearWords</name>
    <message numerus="yes">
        <source>%n links of a new %1 chain are %2 long, %3 at the limit.</source>
        <translation>
            <numerusform>%n link of a new %1 chain is %2 long, %3 at the limit.</numerusform>
            <numerusform>%n links of a new %1 chain are %2 long, %3 at the limit.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>layshaft::ui::AimEditor</name>
    <message numerus="yes">
        <source>There are %n aims already; remove one first.</source>
        <translation>
            <numerusform>There is %n aim already; remove it first.</numerusform>
            <numerusform>There are %n aims already; remove one first.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>layshaft::ui::BikesWindow</name>
    <message numerus="yes">
        <source>%n bikes in the folder.</source>
        <translation>
            <numerusform>One bike in the folder.</numerusform>
            <numerusform>%n bikes in the folder.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n files cannot be read.</source>
        <translation>
            <numerusform>One file cannot be read.</numerusform>
            <numerusform>%n files cannot be read.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n files are still being read.</source>
        <translation>
            <numerusform>One file is still being read.</numerusform>
            <numerusform>%n files are still being read.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>layshaft::ui::ChainPage</name>
    <message numerus="yes">
        <source>Stock&apos;s belt of %n teeth is too short for its pulleys.</source>
        <translation>
            <numerusform>Stock's belt of %n tooth is too short for its pulleys.</numerusform>
            <numerusform>Stock's belt of %n teeth is too short for its pulleys.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Stock&apos;s chain of %n links is too short for its sprockets.</source>
        <translation>
            <numerusform>Stock's chain of %n link is too short for its sprockets.</numerusform>
            <numerusform>Stock's chain of %n links is too short for its sprockets.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>layshaft::ui::ChainSketch</name>
    <message numerus="yes">
        <source>A straight run of chain; %n links are counted from the middle of one pin to the middle of another.</source>
        <translation>
            <numerusform>A straight run of chain; %n link is counted from the middle of one pin to the middle of another.</numerusform>
            <numerusform>A straight run of chain; %n links are counted from the middle of one pin to the middle of another.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n links, middle of pin to middle of pin</source>
        <translation>
            <numerusform>%n link, middle of pin to middle of pin</numerusform>
            <numerusform>%n links, middle of pin to middle of pin</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>layshaft::ui::ColumnsTable</name>
    <message numerus="yes">
        <source>That is too much to paste: at most %n rows fit here. Nothing was changed.</source>
        <translation>
            <numerusform>That is too much to paste: at most %n row fits here. Nothing was changed.</numerusform>
            <numerusform>That is too much to paste: at most %n rows fit here. Nothing was changed.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>layshaft::ui::FieldForm</name>
    <message numerus="yes">
        <source>%1: at most %n numbers</source>
        <translation>
            <numerusform>%1: at most %n number</numerusform>
            <numerusform>%1: at most %n numbers</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>layshaft::ui::FiguresDialog</name>
    <message numerus="yes">
        <source>The readout has room for %n figures: untick one first.</source>
        <translation>
            <numerusform>The readout has room for %n figure: untick it first.</numerusform>
            <numerusform>The readout has room for %n figures: untick one first.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>layshaft::ui::NoteChart</name>
    <message numerus="yes">
        <source>%n track notes by final ratio. Quickest lap: %1 with %2.</source>
        <translation>
            <numerusform>%n track note by final ratio. Quickest lap: %1 with %2.</numerusform>
            <numerusform>%n track notes by final ratio. Quickest lap: %1 with %2.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n track notes by final ratio. Best rating: %1 with %2.</source>
        <translation>
            <numerusform>%n track note by final ratio. Best rating: %1 with %2.</numerusform>
            <numerusform>%n track notes by final ratio. Best rating: %1 with %2.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>layshaft::ui::SegmentsEditor</name>
    <message numerus="yes">
        <source>%n more rows are not understood.</source>
        <translation>
            <numerusform>%n more row is not understood.</numerusform>
            <numerusform>%n more rows are not understood.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>layshaft::ui::TracksEditor</name>
    <message numerus="yes">
        <source>Added %n tracks.</source>
        <translation>
            <numerusform>Added %n track.</numerusform>
            <numerusform>Added %n tracks.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>layshaft::ui::ViewMenu</name>
    <message numerus="yes">
        <source>The readout has room for %n figures: untick one first.</source>
        <translation>
            <numerusform>The readout has room for %n figure: untick it first.</numerusform>
            <numerusform>The readout has room for %n figures: untick one first.</numerusform>
        </translation>
    </message>
</context>
</TS>
