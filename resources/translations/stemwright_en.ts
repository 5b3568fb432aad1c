<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en" sourcelanguage="en">
<context>
    <name>stemwright::BoardCommands</name>
    <message numerus="yes">
        <source>Copied, with %n leaf/leaves from the tray</source>
        <translation>
            <numerusform>Copied, with %n leaf from the tray</numerusform>
            <numerusform>Copied, with %n leaves from the tray</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Copied, with %1 of %n leaf/leaves: the tray has no more of the others</source>
        <translation>
            <numerusform>Copied, with %1 of %n leaf: the tray has no more of it</numerusform>
            <numerusform>Copied, with %1 of %n leaves: the tray has no more of the others</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n tier(s) removed; the leaves are back in the tray</source>
        <translation>
            <numerusform>%n tier removed; its leaves are back in the tray</numerusform>
            <numerusform>%n tiers removed; the leaves are back in the tray</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Remove the %n tier(s)</source>
        <translation>
            <numerusform>Remove the %n tier</numerusform>
            <numerusform>Remove the %n tiers</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>stemwright::LeavesPlace</name>
    <message numerus="yes">
        <source>Stock of %1, %n leaves</source>
        <translation>
            <numerusform>Stock of %1, %n leaf</numerusform>
            <numerusform>Stock of %1, %n leaves</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>stemwright::MainWindow</name>
    <message numerus="yes">
        <source>%n stem(s)</source>
        <translation>
            <numerusform>%n stem</numerusform>
            <numerusform>%n stems</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n leaf/leaves</source>
        <translation>
            <numerusform>%n leaf</numerusform>
            <numerusform>%n leaves</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>stemwright::MixesModel</name>
    <message numerus="yes">
        <source>%1 cannot go while the stock of %2 has %n leaves of it.</source>
        <translation>
            <numerusform>%1 cannot go while the stock of %2 has %n leaf of it.</numerusform>
            <numerusform>%1 cannot go while the stock of %2 has %n leaves of it.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>stemwright::StockModel</name>
    <message numerus="yes">
        <source>%1 cannot go: %n of these leaves are on stems.</source>
        <translation>
            <numerusform>%1 cannot go: %n of these leaves is on a stem.</numerusform>
            <numerusform>%1 cannot go: %n of these leaves are on stems.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SupplyLines</name>
    <message numerus="yes">
        <source>Floss, %n strand(s)</source>
        <translation>
            <numerusform>Floss, %n strand</numerusform>
            <numerusform>Floss, %n strands</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n spool(s)</source>
        <translation>
            <numerusform>%n spool</numerusform>
            <numerusform>%n spools</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n skein(s)</source>
        <translation>
            <numerusform>%n skein</numerusform>
            <numerusform>%n skeins</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n roll(s)</source>
        <translation>
            <numerusform>%n roll</numerusform>
            <numerusform>%n rolls</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n packet(s)</source>
        <translation>
            <numerusform>%n packet</numerusform>
            <numerusform>%n packets</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n pack(s)</source>
        <translation>
            <numerusform>%n pack</numerusform>
            <numerusform>%n packs</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n piece(s)</source>
        <translation>
            <numerusform>%n piece</numerusform>
            <numerusform>%n pieces</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n length(s)</source>
        <translation>
            <numerusform>%n length</numerusform>
            <numerusform>%n lengths</numerusform>
        </translation>
    </message>
</context>
</TS>
