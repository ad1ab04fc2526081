# Una marca leída en voz alta, con las palabras de la cinta.

## Listas, separadas por comas: los números desde cero que tienen su propia palabra, las decenas hasta noventa, las centenas.
small =
    cero, uno, dos, tres, cuatro, cinco, seis, siete, ocho, nueve, diez, once, doce, trece, catorce, quince, dieciséis,
    diecisiete, dieciocho, diecinueve, veinte, veintiuno, veintidós, veintitrés, veinticuatro, veinticinco, veintiséis,
    veintisiete, veintiocho, veintinueve
tens = treinta, cuarenta, cincuenta, sesenta, setenta, ochenta, noventa
hundreds =
    ciento, doscientos, trescientos, cuatrocientos, quinientos, seiscientos, setecientos, ochocientos, novecientos

after-tens = { $tens } y { $ones }
hundred = cien
after-hundreds = { $hundreds } { $rest }
thousands =
    { $count ->
        [one] mil
       *[other] { $words } mil
    }
after-thousands = { $thousands } { $rest }
and = { $whole } y { $fraction }
half = medio
quarters =
    { $count ->
        [one] un cuarto
       *[other] { $parts } cuartos
    }
eighths =
    { $count ->
        [one] un octavo
       *[other] { $parts } octavos
    }
sixteenths =
    { $count ->
        [one] un dieciseisavo
       *[other] { $parts } dieciseisavos
    }
thirty-seconds =
    { $count ->
        [one] un treintaidosavo
        [21] veintiún treintaidosavos
        [31] treinta y un treintaidosavos
       *[other] { $parts } treintaidosavos
    }
