//! Short fixed texts of the screens: labels, buttons, headings, standing cautions.

texts! {
    app_name: "Perchlight", "Perchlight";
    tagline: "The breeder's numbers, carried out on your phone.", "Los números del criador, cumplidos en su teléfono.";

    notices: "Notices", "Avisos";
    status_label: "Just done", "Lo último";
    bar_label: "Places", "Lugares";
    bar_now: "Now", "Ahora";
    bar_weight: "Weight", "Peso";
    bar_weaning: "Weaning", "Destete";
    bar_journal: "Journal", "Diario";
    bar_handover: "Handover", "Entrega";
    bar_more: "Chicks and settings", "Pollos y ajustes";

    back: "Back", "Volver";
    keep: "Keep", "Guardar";
    undo: "Undo", "Deshacer";
    close: "Close", "Cerrar";
    remove: "Remove", "Quitar";
    optional: "may stay empty", "puede quedar vacío";

    status_keeping: "Keeping…", "Guardando…";
    status_kept: "Kept.", "Guardado.";
    status_taken_back: "Taken back.", "Retirado.";
    keep_browser_only: "Kept in this browser, but one of its two copies could not be written. Save a backup.", "Guardado en este navegador, pero no se pudo escribir una de sus dos copias. Guarde una copia de seguridad.";
    keep_memory_only: "NOT kept: this browser refuses to store anything. It is only in memory until this page closes.", "SIN guardar: este navegador no deja guardar nada. Solo está en memoria hasta cerrar esta página.";
    keep_full: "NOT kept: the browser's storage is full. New entries are only in memory until this page closes.", "SIN guardar: el almacenamiento del navegador está lleno. Lo nuevo solo está en memoria hasta cerrar esta página.";
    keep_newer: "This phone holds records of a newer version of Perchlight. They are left untouched, and nothing new is kept until you update.", "Este teléfono tiene registros de una versión más nueva de Perchlight. No se tocan, y nada nuevo se guarda hasta que actualice.";
    keep_clock: "Some entries are later than this phone's clock. Check its day and time: what is due may be wrong.", "Hay anotaciones posteriores a la hora de este teléfono. Revise su día y hora: lo que toca puede no ser cierto.";
    keep_damaged: "Some records could not be read. They were set aside, not deleted.", "Algunos registros no se pudieron leer. Se apartaron, no se borraron.";
    keep_download_raw: "Download them", "Descargarlos";
    save_backup: "Save a backup", "Guardar una copia";

    piece_waiting: "One moment: this part of the app is on its way.", "Un momento: esta parte de la aplicación está en camino.";
    piece_failed: "This part of the app could not be fetched. Your records are safe. Connect to the network and try again.", "No se pudo traer esta parte de la aplicación. Sus registros están a salvo. Conéctese a la red y pruebe otra vez.";
    piece_again: "Try again", "Probar otra vez";

    demo_banner: "Made-up chick. Nothing you enter here is kept.", "Pollo inventado. Nada de lo que escriba aquí se guarda.";
    demo_leave: "Leave", "Salir";

    caution_title: "Before you start", "Antes de empezar";
    caution_text: "Perchlight is not veterinary advice. Your breeder and an avian vet decide. Hand-feeding can burn, choke or starve a chick: learn it in person first if you can. Selling, shipping or carrying unweaned or listed birds is restricted in many places: check the law where you live. Numbers marked \"ours\" have not been tested on birds.", "Perchlight no es consejo veterinario. Deciden su criador y un veterinario de aves. Alimentar a mano puede quemar, ahogar o matar de hambre a un pollo: apréndalo antes en persona si puede. Vender, enviar o transportar aves sin destetar o protegidas está restringido en muchos lugares: consulte la ley. Los números marcados \"nuestro\" no se han probado en aves.";
    caution_accept: "I have read this", "Lo he leído";
    caution_short: "Not veterinary advice. Breeder and avian vet decide.", "No es consejo veterinario. Deciden el criador y el veterinario de aves.";

    start_title: "A chick is coming home", "Un pollo llega a casa";
    start_card: "I got a card", "Tengo una tarjeta";
    start_card_hint: "Paste the text or open the file from your breeder.", "Pegue el texto o abra el archivo de su criador.";
    start_type: "I'll type it in", "Lo escribo yo";
    start_type_hint: "Six questions; your breeder knows the answers.", "Seis preguntas; su criador sabe las respuestas.";
    start_template: "From the card of", "A partir de la tarjeta de";
    start_demo: "Show me with a made-up chick", "Muéstreme un pollo inventado";
    start_demo_hint: "Look around; nothing is kept.", "Mire; no se guarda nada.";
    start_backup: "Open a backup", "Abrir una copia";
    start_backup_hint: "From another phone or an earlier time.", "De otro teléfono o de antes.";
    start_wrong: "Something's wrong with a chick right now", "Algo va mal con un pollo ahora mismo";

    plan_title: "The breeder's numbers", "Los números del criador";
    plan_species: "Which parrot is it?", "¿Qué loro es?";
    plan_name: "What is it called?", "¿Cómo se llama?";
    plan_hatched: "When did it hatch?", "¿Cuándo nació?";
    plan_weight: "What did it weigh at handover, with an empty crop?", "¿Cuánto pesaba en la entrega, con el buche vacío?";
    plan_weight_day: "Weighed on", "Pesado el";
    plan_feeds: "When and how much is it fed?", "¿Cuándo y cuánto come?";
    plan_feeds_hint: "Leave a time empty where there is no feed.", "Deje vacía la hora donde no haya toma.";
    plan_time: "time", "hora";
    plan_volume: "ml", "ml";
    plan_breeder: "How do you reach the breeder?", "¿Cómo se localiza al criador?";
    plan_contact_name: "Name", "Nombre";
    plan_contact_number: "Telephone", "Teléfono";
    plan_keep: "Start with these", "Empezar con estos";
    plan_save: "Keep the changes", "Guardar los cambios";
    plan_more: "More of the plan", "Más del plan";
    plan_ring: "Ring or chip number", "Número de anilla o chip";
    plan_powder: "Powder in the mix, % by weight", "Polvo en la mezcla, % en peso";
    plan_loss: "Loss that wants a call, %", "Pérdida que pide una llamada, %";
    plan_syringe: "Syringe, ml", "Jeringa, ml";
    plan_serve_from: "Serve from", "Dar desde";
    plan_serve_to: "Serve up to", "Dar hasta";
    plan_settle: "Days to settle in without dropping a feed", "Días de adaptación sin quitar tomas";
    plan_waiting: "Days between two drops", "Días entre dos tomas quitadas";
    plan_solids: "Solid foods on offer", "Alimentos sólidos que se ofrecen";
    plan_note: "Anything else the breeder said", "Algo más que dijo el criador";
    plan_default: "default, not confirmed by the breeder", "valor por defecto, no confirmado por el criador";
    plan_confirm: "The breeder says these are right", "El criador dice que son correctos";
    plan_confirmed: "Numbers confirmed", "Números confirmados";
    plan_unconfirmed: "Some numbers are defaults that nobody has confirmed. Ask your breeder.", "Algunos números son valores por defecto que nadie ha confirmado. Pregunte a su criador.";

    now_next: "Next feed", "Próxima toma";
    now_no_feed: "No more feeds in the plan.", "No hay más tomas en el plan.";
    now_feed: "Feed now", "Dar la toma";
    now_log: "Log it", "Anotar";
    now_weigh: "Weigh", "Pesar";
    now_crop: "Crop", "Buche";
    now_droppings: "Droppings", "Excrementos";
    now_solids: "Solids", "Sólidos";
    now_home: "Home, powder", "Hogar, polvo";
    now_wrong: "Something's wrong", "Algo va mal";
    now_weigh_first: "Not weighed yet today: weigh before the first feed.", "Hoy aún sin pesar: pese antes de la primera toma.";
    now_strip: "Today", "Hoy";
    now_call: "Call", "Llamar:";
    now_what_to_say: "What to say", "Qué decir";
    now_more_findings: "More", "Más";
    raised_two: "Two reasons to ring at the same time: the vet today (ours).", "Dos motivos de llamada a la vez: veterinario hoy (nuestro).";
    raised_dull: "Dull, and another reason for the vet: together an emergency (ours).", "Decaído, y otro motivo para el veterinario: juntos, una emergencia (nuestro).";
    now_no_vet: "There is no vet's number here. Look up the nearest avian vet and ring now.", "Aquí no hay número de veterinario. Busque el veterinario de aves más cercano y llame ya.";
    now_add_number: "Add the number to the plan", "Añadir el número al plan";
    now_no_number: "No telephone number yet. Add one in settings.", "Aún no hay número de teléfono. Añádalo en ajustes.";
    now_copy: "Copy", "Copiar";
    now_copied: "Copied.", "Copiado.";

    strip_upcoming: "later today", "más tarde";
    strip_after_midnight: "after midnight", "pasada la medianoche";
    strip_due: "due now", "toca ahora";
    strip_late: "late", "con retraso";
    strip_not_noted: "not noted", "sin anotar";
    strip_try_again: "to be offered again", "se ofrece otra vez";
    strip_put_off: "left to the next feed", "queda para la siguiente toma";
    strip_on_the_way: "on the way", "durante el viaje";
    strip_refused: "refused", "rechazada";
    strip_weighed: "Weighed", "Pesado";

    finding_why: "Why it matters", "Por qué importa";
    finding_do: "Do", "Haga";
    finding_avoid: "Do not", "No haga";
    finding_limit: "Limit", "Límite";

    log_title: "Log a feed", "Anotar una toma";
    log_which: "It counts as another feed", "Cuenta como otra toma";
    log_taken: "Taken", "Tomado";
    log_when: "When", "Cuándo";
    log_day: "Day", "Día";
    log_time: "Time", "Hora";
    log_done: "Done", "Hecho";
    log_refused: "It refused", "La rechazó";
    log_passed_over: "Leave this feed out", "Saltar esta toma";
    log_why: "Why was it left out?", "¿Por qué se saltó?";
    log_served_at: "Temperature when served", "Temperatura al darla";
    log_response: "How it took it", "Cómo la tomó";
    log_more: "Temperature and response", "Temperatura y respuesta";

    log_noted_already: "Food is already noted for this feed. Note it again only if there was more.", "Ya hay comida anotada en esta toma. Anótela otra vez solo si hubo más.";
    asked_given: "Given", "Se dio";
    asked_not_given: "Not given", "No se dio";
    asked_not_known: "I don't know", "No lo sé";
    asked_still: "Not given? It may still be given now.", "¿No se dio? Aún puede darse ahora.";
    asked_otherwise: "Given at another time, or another amount", "Se dio a otra hora, o en otra cantidad";
    same_food_until: "Until you say, the larger amount counts. Look at the crop before the next feed.", "Mientras no lo diga, cuenta la cantidad mayor. Mire el buche antes de la siguiente toma.";
    now_try_again: "It was refused. Offer it again then, freshly mixed, and never hotter than the plan says.", "La rechazó. Ofrézcasela otra vez entonces, recién mezclada y nunca más caliente que en el plan.";
    when_now: "now", "ahora";

    weigh_title: "Weigh", "Pesar";
    weigh_field: "Weight", "Peso";
    weigh_crop: "Crop", "Buche";
    weigh_empty: "empty", "vacío";
    weigh_after: "after feed", "tras toma";
    weigh_not_sure: "not sure", "no sé";
    weigh_last: "last", "último";
    weigh_yes: "Yes, that is what the scale says", "Sí, es lo que dice la báscula";
    weigh_erase: "Erase the last digit", "Borrar la última cifra";
    weigh_hint: "In the morning, before the first feed, with an empty crop.", "Por la mañana, antes de la primera toma, con el buche vacío.";

    weight_title: "Weight", "Peso";
    weight_none: "No weighing yet. Weigh every morning before the first feed, with an empty crop.", "Aún no hay pesadas. Pese cada mañana antes de la primera toma, con el buche vacío.";
    weight_table: "All weighings", "Todas las pesadas";
    weight_when: "When", "Cuándo";
    weight_weight: "Weight", "Peso";
    weight_against: "Against handover", "Contra la entrega";
    weight_key: "Full dot: empty crop. Hollow dot: after a feed, with the food taken off. Ringed dot: doubted. Line and band: level and its 95 % range; lighter fan: the next days at this pace. Dashed: handover weight. Hatched: below the limit. Mark on the axis: a feed was dropped.", "Punto lleno: buche vacío. Hueco: tras una toma, sin la comida. Con anillo: dudoso. Línea y banda: nivel y su margen del 95 %; abanico claro: los próximos días a este paso. Rayas: peso de entrega. Tramado: bajo el límite. Marca en el eje: se quitó una toma.";
    weight_too_few: "A forecast needs four weighings.", "Un pronóstico necesita cuatro pesadas.";
    weight_chart: "Weight chart", "Gráfico de peso";

    journal_title: "Journal", "Diario";
    journal_none: "Nothing noted yet.", "Aún no hay nada anotado.";
    journal_search: "Search", "Buscar";
    journal_no_match: "Nothing matches.", "Nada coincide.";
    journal_show_more: "Show earlier days", "Mostrar días anteriores";
    journal_note: "Write a note", "Escribir una nota";
    journal_note_field: "Note", "Nota";
    journal_retracted: "taken back", "retirado";

    look_title_crop: "Crop", "Buche";
    look_title_droppings: "Droppings", "Excrementos";
    look_title_solids: "Solids", "Sólidos";
    look_crop_state: "What do you see?", "¿Qué ve?";
    look_crop_feel: "And to the touch?", "¿Y al tacto?";
    look_droppings_look: "What do they look like?", "¿Qué aspecto tienen?";
    look_solids_what: "Which food?", "¿Qué alimento?";
    look_solids_eaten: "How much?", "¿Cuánto?";

    handover_title: "Handover", "Entrega";
    handover_backup: "Backup", "Copia de seguridad";
    handover_backup_text: "Your records are kept in this browser on this phone. Nobody else has a copy. If you clear the browser's data, lose the phone or leave the app unused in a Safari tab for a week, they are gone unless you saved a backup file.", "Sus registros están en este navegador, en este teléfono. Nadie más tiene una copia. Si borra los datos del navegador, pierde el teléfono o deja la app una semana sin usar en una pestaña de Safari, se pierden si no guardó una copia.";
    handover_backup_out: "Save a backup file", "Guardar un archivo de copia";
    handover_take_in: "Take in a card, report or backup", "Incorporar tarjeta, informe o copia";
    handover_send: "Send", "Enviar";
    handover_send_hint: "The report opens on any phone or computer, and the breeder's Perchlight takes it in.", "El informe se abre en cualquier teléfono u ordenador, y el Perchlight del criador lo incorpora.";
    handover_report: "Report for the breeder", "Informe para el criador";
    handover_report_link: "Copy report as link", "Copiar informe como enlace";
    handover_only_new_hint: "For a phone that took in the last link. If it lacks anything from before, copy the whole report.", "Para un teléfono que incorporó el último enlace. Si le falta algo de antes, copie el informe entero.";
    handover_vet_page: "Page for the vet", "Página para el veterinario";
    handover_calendar: "Feeds in the phone's calendar", "Tomas en el calendario del teléfono";
    handover_calendar_hint: "A closed web app cannot ring; the calendar can. For two weeks.", "Una app web cerrada no puede sonar; el calendario sí. Para dos semanas.";
    handover_calendar_add: "Calendar file", "Archivo de calendario";
    handover_calendar_remove: "Take them out again", "Quitarlas de nuevo";
    handover_tables: "Tables", "Tablas";
    handover_weights_table: "Weights (CSV)", "Pesos (CSV)";
    handover_feeds_table: "Feeds (CSV)", "Tomas (CSV)";
    handover_card_link: "Copy card as link", "Copiar tarjeta como enlace";
    handover_card_file: "Card as a file to print", "Tarjeta como archivo para imprimir";
    handover_template: "New card from this one", "Tarjeta nueva a partir de esta";
    handover_template_hint: "For the next chick: the same plan and breeder, without name, ring, hatch day, weight and vets.", "Para el siguiente pollo: el mismo plan y criador, sin nombre, anilla, nacimiento, peso ni veterinarios.";
    handover_placed_hint: "Breeders: take in the reports that owners send; with two chicks or more a table of all stands here.", "Criadores: incorpore los informes que le envían; con dos pollos o más aparece aquí una tabla de todos.";
    handover_nudge: "A backup is due: save one and check it.", "Toca guardar una copia y comprobarla.";
    handover_nudge_later: "In 3 days", "En 3 días";
    handover_last_backup: "Last backup that was checked", "Última copia comprobada";
    handover_never: "never", "nunca";
    handover_paste: "Paste a text", "Pegar un texto";
    handover_file: "Choose a file", "Elegir un archivo";
    handover_read: "Read it", "Leerlo";
    handover_take: "Take it in", "Incorporarlo";
    handover_nothing_changed: "Nothing was changed.", "No se ha cambiado nada.";

    wrong_title: "Something's wrong", "Algo va mal";
    wrong_intro: "Tap what you see. The answer comes at once.", "Toque lo que ve. La respuesta llega enseguida.";
    wrong_note: "Note it in the journal", "Anotarlo en el diario";
    wrong_gone: "It is gone", "Ya pasó";
    wrong_first: "First", "Primero";

    settings_title: "Chicks and settings", "Pollos y ajustes";
    settings_chicks: "Chicks", "Pollos";
    settings_add: "Add a chick", "Añadir un pollo";
    settings_plan: "Change the plan", "Cambiar el plan";
    settings_units: "Units", "Unidades";
    settings_mass: "Weight", "Peso";
    settings_temperature: "Temperature", "Temperatura";
    settings_theme: "Light", "Luz";
    settings_theme_auto: "as the phone", "como el teléfono";
    settings_theme_night: "night", "noche";
    settings_theme_day: "day", "día";
    settings_language: "Language", "Idioma";
    settings_language_english: "English", "English";
    settings_language_spanish: "Español", "Español";
    settings_contacts: "Whom to ring", "A quién llamar";
    settings_carer: "Your name in the journal", "Su nombre en el diario";
    settings_carer_hint: "Shown to the breeder and to a second carer.", "Lo ven el criador y un segundo cuidador.";
    settings_storage: "Storage", "Almacenamiento";
    settings_persisted: "The browser has promised not to clear it by itself.", "El navegador ha prometido no borrarlo por sí mismo.";
    settings_not_persisted: "The browser may clear it when space is short. Save backups.", "El navegador puede borrarlo si falta espacio. Guarde copias.";
    settings_save_all: "Save everything as plain text", "Guardar todo como texto";
    settings_install_text: "Add Perchlight to the home screen before you enter a chick: on an iPhone the installed app and Safari keep separate records.", "Añada Perchlight a la pantalla de inicio antes de escribir un pollo: en un iPhone la app instalada y Safari guardan registros separados.";

    update_ready: "A new version is ready.", "Hay una versión nueva.";
    update_now: "Reload now", "Recargar ahora";
    update_later: "Later", "Más tarde";

    weaning_title: "Weaning", "Destete";
}
