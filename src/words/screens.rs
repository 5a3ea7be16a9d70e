//! Short fixed texts of the screens: labels, buttons, headings, standing cautions.

texts! {
    app_name: "Perchlight", "Perchlight";
    tagline: "The breeder's plan, step by step on your phone.", "El plan del criador, paso a paso en su teléfono.";

    notices: "Notices", "Avisos";
    status_label: "Last done", "Lo último";
    bar_label: "Screens", "Pantallas";
    bar_now: "Now", "Ahora";
    bar_weight: "Weight", "Peso";
    bar_weaning: "Weaning", "Destete";
    bar_journal: "Journal", "Diario";
    bar_handover: "Handover", "Compartir";
    bar_more: "Chicks and settings", "Polluelos y ajustes";

    help: "Help", "Ayuda";
    back: "Back", "Volver";
    keep: "Keep", "Guardar";
    undo: "Undo", "Deshacer";
    close: "Close", "Cerrar";
    remove: "Remove", "Eliminar";
    optional: "optional", "opcional";

    status_keeping: "Keeping…", "Guardando…";
    status_kept: "Kept.", "Guardado.";
    status_taken_back: "Taken back.", "Deshecho.";
    keep_browser_only: "Saved in this browser, but one of its two copies failed. Save a backup file now.", "Guardado en este navegador, pero falló una de sus dos copias. Guarde ahora una copia de seguridad.";
    keep_memory_only: "NOT saved: this browser does not let the app store anything. Close this page and it is lost.", "SIN guardar: este navegador no deja guardar nada. Si cierra esta página, se pierde.";
    keep_full: "NOT saved: this phone's storage is full. Close this page and the new entries are lost.", "SIN guardar: no queda espacio en el teléfono. Si cierra esta página, lo nuevo se pierde.";
    keep_newer: "The records on this phone are from a newer version of Perchlight. They are safe. Update the app: until then nothing new is saved.", "Los datos de este teléfono son de una versión más nueva de Perchlight. Están a salvo. Actualice la app: hasta entonces no se guarda nada nuevo.";
    keep_clock: "Check the day and time of this phone: some entries are later than its clock, so the times of feeds may be wrong.", "Revise el día y la hora de este teléfono: hay anotaciones posteriores, así que las horas de las tomas pueden estar mal.";
    keep_damaged: "Some records could not be read. They were put aside, not deleted.", "Algunos datos no se pudieron leer. Se apartaron, no se borraron.";
    keep_download_raw: "Download them", "Descargarlos";
    save_backup: "Save a backup", "Guardar una copia";

    piece_waiting: "One moment: loading this screen.", "Un momento: cargando esta pantalla.";
    piece_failed: "This screen could not be loaded. Your records are safe. Connect to the internet and try again.", "No se pudo cargar esta pantalla. Sus datos están a salvo. Conéctese a internet y pruebe otra vez.";
    piece_again: "Try again", "Probar otra vez";

    demo_banner: "This is a made-up example. Nothing you enter here is saved.", "Esto es un ejemplo. Nada de lo que escriba aquí se guarda.";
    demo_leave: "Leave the example", "Salir del ejemplo";

    caution_title: "Before you start", "Antes de empezar";
    caution_text: "Perchlight is not veterinary advice. Your breeder and an avian vet decide. Hand-feeding can burn, choke or starve a chick: learn it in person first if you can. Many places restrict selling, shipping or carrying unweaned or protected birds: check the law where you live. Limits marked \"our own\" have not been tested on birds.", "Perchlight no sustituye al veterinario. Deciden su criador y un veterinario de aves. Dar de comer a mano puede quemar, ahogar o matar de hambre a un polluelo: si puede, apréndalo antes en persona. En muchos lugares está restringido vender, enviar o transportar aves sin destetar o protegidas: consulte la ley. Los límites marcados «valor propio» no se han probado en aves.";
    caution_accept: "I have read this", "Lo he leído";
    caution_short: "Not veterinary advice. Breeder and avian vet decide.", "No sustituye al veterinario. Deciden el criador y el veterinario de aves.";

    start_title: "A chick is coming home", "Llega un polluelo a casa";
    start_card: "I have the breeder's card", "Tengo la ficha del criador";
    start_card_hint: "Paste the message or open the file from your breeder.", "Pegue el mensaje o abra el archivo de su criador.";
    start_type: "I'll type it in", "Lo escribo yo";
    start_type_hint: "Six questions; your breeder knows the answers.", "Seis preguntas; su criador sabe las respuestas.";
    start_template: "From the card of", "A partir de la ficha de";
    start_demo: "Show me an example", "Ver un ejemplo";
    start_demo_hint: "Look around; nothing is saved.", "Mire lo que quiera; no se guarda nada.";
    start_backup: "Open a backup", "Abrir una copia de seguridad";
    start_backup_hint: "From another phone, or an older one of this phone.", "De otro teléfono, o una anterior de este.";

    start_breeder: "I am a breeder", "Soy criador";
    start_breeder_hint: "Your chicks, the next card, reports from owners.", "Sus polluelos, la próxima ficha, informes de los dueños.";

    start_weeks_hint: "Short cards to read before it comes.", "Fichas cortas para leer antes de que llegue.";

    plan_title: "The breeder's numbers", "Los números del criador";
    plan_species: "Which parrot is it?", "¿Qué loro es?";
    plan_name: "What is its name?", "¿Cómo se llama?";
    plan_hatched: "When did it hatch?", "¿Cuándo nació?";
    plan_weight: "What did it weigh at handover, with an empty crop?", "¿Cuánto pesaba en la entrega, con el buche vacío?";
    plan_weight_day: "Weighed on", "Pesado el";
    plan_feeds: "When and how much is it fed?", "¿A qué hora y cuánto se le da?";
    plan_feeds_hint: "No feed at that time of day? Leave its time empty.", "¿No hay toma en ese momento? Deje la hora vacía.";
    plan_time: "time", "hora";
    plan_volume: "ml", "ml";
    plan_breeder: "How do you call the breeder?", "¿Cómo se llama al criador?";
    plan_contact_name: "Name", "Nombre";
    plan_contact_number: "Telephone", "Teléfono";
    plan_keep: "Start with these", "Empezar con estos";
    plan_save: "Save the changes", "Guardar los cambios";
    plan_more: "More of the plan", "Más del plan";
    plan_ring: "Ring or chip number", "Anilla (anillo) o chip";
    plan_powder: "Powder in the formula, % by weight", "Papilla en polvo dentro de la preparada, % en peso";
    plan_loss: "Call the breeder at this weight loss (%)", "Llamar al criador si pierde (%)";
    plan_syringe: "Syringe (ml)", "Jeringa (ml)";
    plan_serve_from: "Serve from", "Dar desde";
    plan_serve_to: "Serve up to", "Dar hasta";
    plan_settle: "Days to settle in without dropping a feed", "Días de adaptación sin quitar tomas";
    plan_waiting: "Days between two drops", "Días entre dos tomas quitadas";
    plan_solids: "Solid foods on offer", "Alimentos sólidos que se ofrecen";
    plan_note: "Anything else the breeder said", "Algo más que dijo el criador";
    plan_default: "usual value, not confirmed by the breeder", "valor habitual, sin confirmar por el criador";
    plan_confirm: "The breeder says so", "Lo dice el criador";
    plan_confirmed: "Confirmed", "Confirmado";
    plan_unconfirmed: "Some numbers are usual values that your breeder has not confirmed. Ask your breeder.", "Algunos números son valores habituales que su criador no ha confirmado. Pregúntele.";

    now_next: "Next feed", "Próxima toma";
    now_no_feed: "No more feeds in the plan.", "No hay más tomas en el plan.";
    now_feed: "Feed now", "Dar la toma";
    now_weigh: "Weigh", "Pesar";
    now_crop: "Crop", "Buche";
    now_droppings: "Droppings", "Heces";
    now_solids: "Solids", "Sólidos";
    now_home: "First days", "Primeros días";
    now_wrong: "Something's wrong", "Algo va mal";
    now_weigh_first: "Not weighed yet today: weigh before the first feed.", "Hoy aún no se ha pesado: pese antes de la primera toma.";
    now_strip: "Today", "Hoy";
    call_reached: "Did you reach them?", "¿Le contestaron?";
    call_yes: "Yes, note the call", "Sí, anotar la llamada";
    call_no: "No answer", "No contestan";
    now_what_to_say: "What to say", "Qué decir";
    now_more_findings: "More", "Más";
    raised_two: "Two reasons to call at once: vet today (our own limit).", "Dos motivos para llamar a la vez: al veterinario hoy (valor propio).";
    raised_dull: "Dull, and another reason for the vet: together an emergency (our own limit).", "Decaído y con otro motivo para ir al veterinario: juntos son una emergencia (valor propio).";
    now_no_vet: "No vet's number is saved here. Look up the nearest avian vet and call now.", "Aquí no hay número de veterinario. Busque ya al más cercano que trate loros y llame.";
    now_add_number: "Add the number to the plan", "Añadir el número al plan";
    now_no_number: "No phone number yet. Add one in settings.", "Aún no hay número de teléfono. Añádalo en ajustes.";
    now_copy: "Copy", "Copiar";
    now_copied: "Copied.", "Copiado.";

    strip_upcoming: "later today", "más tarde";
    strip_after_midnight: "after midnight", "pasada la medianoche";
    strip_held: "not before somebody was asked", "no antes de preguntar";
    strip_due: "due now", "toca ahora";
    strip_late: "late", "con retraso";
    strip_not_noted: "not noted", "sin anotar";
    strip_try_again: "to be offered again", "se ofrece otra vez";
    strip_put_off: "left for the next feed", "se deja para la siguiente toma";
    strip_on_the_way: "on the way", "durante el viaje";
    strip_refused: "refused", "rechazada";
    strip_weighed: "Weighed", "Pesado";

    finding_why: "Why it matters", "Por qué importa";
    finding_do: "Do", "Qué hacer";
    finding_avoid: "Do not", "Qué no hacer";
    finding_limit: "Limit", "Límite";

    log_title: "Log a feed", "Anotar una toma";
    log_which: "It was another feed", "Era otra toma";
    log_taken: "Taken", "Tomó";
    log_when: "When", "Cuándo";
    log_day: "Day", "Día";
    log_time: "Time", "Hora";
    log_done: "Done", "Anotar";
    log_refused: "It refused", "No la quiso";
    log_passed_over: "Leave this feed out", "Saltar esta toma";
    log_why: "Why was it left out?", "¿Por qué no se dio?";
    log_served_at: "Temperature when served", "Temperatura al darla";
    log_response: "How did it eat?", "¿Cómo comió?";
    log_more: "Temperature, and how it ate", "Temperatura y cómo comió";

    log_noted_already: "This feed is noted already. Note it again only if you gave more.", "Esta toma ya está anotada. Anótela otra vez solo si le dio más.";
    asked_given: "Given", "Se dio";
    asked_not_given: "Not given", "No se dio";
    asked_not_known: "I don't know", "No lo sé";
    asked_still: "Not given? You may still give it now.", "¿No se dio? Aún se puede dar ahora.";
    asked_otherwise: "Given at another time, or another amount", "Se dio a otra hora o en otra cantidad";
    same_food_until: "Until you answer, the larger amount counts. Look at the crop before the next feed.", "Hasta que responda, cuenta la cantidad mayor. Mire el buche antes de la siguiente toma.";
    now_try_again: "It was refused. Mix fresh and offer it again at that time, never hotter than the plan says.", "No la quiso. Prepare papilla nueva y ofrézcasela otra vez a esa hora, nunca más caliente de lo que dice el plan.";
    when_now: "now", "ahora";

    weigh_title: "Weigh", "Pesar";
    weigh_field: "Weight", "Peso";
    weigh_crop: "Crop", "Buche";
    weigh_empty: "empty", "vacío";
    weigh_after: "after feed", "tras la toma";
    weigh_not_sure: "not sure", "no lo sé";
    weigh_yes: "Yes, that is what the scale says", "Sí, es lo que marca la báscula";
    weigh_erase: "Erase the last digit", "Borrar la última cifra";
    weigh_hint: "In the morning, before the first feed, with an empty crop.", "Por la mañana, antes de la primera toma, con el buche vacío.";

    weight_title: "Weight", "Peso";
    weight_none: "No weighing yet. Weigh every morning before the first feed, with an empty crop.", "Aún no hay pesadas. Pese cada mañana antes de la primera toma, con el buche vacío.";
    weight_table: "All weighings", "Todas las pesadas";
    weight_when: "When", "Cuándo";
    weight_weight: "Weight", "Peso";
    weight_against: "Compared with handover", "Frente al peso de entrega";
    weight_key: "Full dot: empty crop. Hollow dot: after a feed, with the food taken off. Dot with a circle: may be wrong. Line and band: the level and its 95 % range. Lighter fan: the next days at this pace. Dashed line: handover weight. Hatched: below the limit. Mark on the axis: a feed was dropped.", "Punto lleno: buche vacío. Punto hueco: tras una toma, con la comida descontada. Punto con círculo: dudoso. Línea y banda: el nivel y su margen del 95 %. Abanico claro: los próximos días a este ritmo. Línea de trazos: peso de entrega. Rayado: por debajo del límite. Marca en el eje: se quitó una toma.";
    weight_too_few: "With four weighings there is a forecast.", "Con cuatro pesadas habrá un pronóstico.";
    weight_chart: "Weight chart", "Gráfico de peso";

    journal_title: "Journal", "Diario";
    journal_none: "Nothing noted yet.", "Aún no hay nada anotado.";
    journal_search: "Search", "Buscar";
    journal_no_match: "Nothing matches.", "Nada coincide.";
    journal_show_more: "Show earlier days", "Mostrar días anteriores";
    journal_note: "Write a note", "Escribir una nota";
    journal_note_field: "Note", "Nota";
    journal_retracted: "removed", "eliminado";

    look_title_crop: "Crop", "Buche";
    look_title_droppings: "Droppings", "Heces";
    look_title_solids: "Solids", "Sólidos";
    look_crop_state: "What do you see?", "¿Qué ve?";
    look_crop_feel: "How does it feel?", "¿Y al tacto?";
    look_droppings_look: "What do they look like?", "¿Qué aspecto tienen?";
    look_red: "red", "rojas";
    look_red_food: "Was red food eaten in the last 24 h (beetroot, berries, red palm, coloured pellets)?", "¿Comió algo rojo en las últimas 24 h (remolacha o betabel, bayas, palma roja, pellets de color)?";
    look_red_food_hint: "Without a yes it counts as blood.", "Si no es un sí, cuenta como sangre.";
    look_droppings_count: "How many on the paper since it was last changed? (optional, about is enough)", "¿Cuántas hay en el papel desde el último cambio? (opcional, basta una cifra aproximada)";
    look_droppings_count_hint: "At bedtime the day's paper, in the morning the night's. After some days the app knows how many are usual.", "Al acostarlo, el papel del día; por la mañana, el de la noche. Tras unos días la app sabe cuántas son lo habitual.";
    look_droppings_paper: "Which paper?", "¿Qué papel?";
    look_solids_other: "other", "otro";
    look_solids_what: "Which food?", "¿Qué comió?";
    look_solids_eaten: "How much?", "¿Cuánto?";

    handover_title: "Handover", "Compartir";
    handover_backup: "Backup", "Copia de seguridad";
    handover_backup_text: "Save a backup file. Your records are only in this browser, on this phone; nobody else has a copy. Lose the phone, clear the browser's data or leave the app unused in a Safari tab for a week, and they are gone.", "Guarde una copia de seguridad. Sus datos solo están en este navegador, en este teléfono; nadie más los tiene. Si pierde el teléfono, borra los datos del navegador o deja la app una semana sin usar en una pestaña de Safari, esos datos se pierden, salvo que haya guardado una copia.";
    handover_backup_out: "Save a backup file", "Guardar un archivo de copia";
    handover_take_in: "Import a card, report or backup", "Importar ficha, informe o copia";
    handover_send: "Send", "Enviar";
    handover_send_hint: "The report opens on any phone or computer. The breeder can import it into Perchlight.", "El informe se abre en cualquier teléfono o computadora (ordenador). El criador puede importarlo en Perchlight.";
    handover_report: "Report for the breeder", "Informe para el criador";
    handover_report_link: "Copy report as link", "Copiar informe como enlace";
    handover_only_new_hint: "For a phone that imported the last link. If anything older is missing there, copy the whole report.", "Para un teléfono que importó el último enlace. Si allí falta algo anterior, copie el informe entero.";
    handover_vet_page: "Page for the vet", "Página para el veterinario";
    handover_calendar: "Feeds in the phone's calendar", "Tomas en el calendario del teléfono";
    handover_calendar_hint: "A closed app cannot sound an alarm; the calendar can. For two weeks.", "Una app cerrada no puede sonar; el calendario sí. Para dos semanas.";
    handover_calendar_add: "Calendar file", "Archivo de calendario";
    handover_calendar_remove: "Remove them again", "Quitarlas otra vez";
    handover_tables: "Tables", "Tablas";
    handover_weights_table: "Weights (CSV)", "Pesos (CSV)";
    handover_feeds_table: "Feeds (CSV)", "Tomas (CSV)";
    handover_droppings_table: "Droppings (CSV)", "Heces (CSV)";
    handover_card_link: "Copy card as link", "Copiar ficha como enlace";
    handover_card_file: "Card as a file to print", "Ficha como archivo para imprimir";
    handover_template: "New card from this one", "Ficha nueva a partir de esta";
    handover_template_hint: "For the next chick: same plan and breeder; name, ring, hatch day, weight and vets stay empty.", "Para el siguiente polluelo: mismo plan y criador; nombre, anilla, nacimiento, peso y veterinarios quedan vacíos.";
    handover_placed_hint: "Breeders: import the reports that owners send. From two chicks on, a table of all of them is here.", "Criadores: importe los informes que le envían. A partir de dos polluelos, aquí hay una tabla de todos.";
    handover_nudge: "Time for a backup: save one and check it.", "Toca una copia de seguridad: guárdela y compruébela.";
    handover_nudge_later: "In 3 days", "Dentro de 3 días";
    handover_last_backup: "Last checked backup", "Última copia comprobada";
    handover_never: "never", "nunca";
    handover_paste: "Paste a text", "Pegar un texto";
    handover_file: "Choose a file", "Elegir un archivo";
    handover_read: "Next", "Siguiente";
    handover_take: "Import", "Importar";
    handover_nothing_changed: "Nothing was changed.", "No se cambió nada.";

    wrong_title: "Help", "Ayuda";
    wrong_seen: "What do you see?", "¿Qué ve?";
    wrong_all: "All signs", "Todas las señales";
    wrong_unsure: "Not sure which? Call your breeder. This is not veterinary advice: your vet's word comes first.", "¿No sabe cuál? Llame a su criador. Esto no sustituye al veterinario: su palabra va primero.";
    wrong_wont_eat: "Won't eat", "No come";
    wrong_food_left: "Food left in the morning", "Comida en el buche por la mañana";
    wrong_weight_down: "Weight down", "Baja de peso";
    wrong_breathing: "Breathing", "Respira mal";
    wrong_cold: "Cold", "Está frío";
    wrong_fed_hot: "Fed too hot", "Papilla muy caliente";
    wrong_look: "Note what the crop looks like", "Anotar cómo está el buche";
    wrong_weigh: "Weigh it now", "Pesarlo ahora";
    wrong_note: "Note it in the journal", "Anotarlo en el diario";
    wrong_gone: "It is gone", "Ya no lo tiene";

    settings_title: "Chicks and settings", "Polluelos y ajustes";
    settings_chicks: "Chicks", "Polluelos";
    settings_add: "Add a chick", "Añadir un polluelo";
    settings_plan: "Change the plan", "Cambiar el plan";
    settings_units: "Units", "Unidades";
    settings_mass: "Weight", "Peso";
    settings_temperature: "Temperature", "Temperatura";
    settings_theme: "Screen colours", "Colores de la pantalla";
    settings_theme_auto: "same as the phone", "igual que el teléfono";
    settings_theme_night: "night", "noche";
    settings_theme_day: "day", "día";
    settings_language: "Language", "Idioma";
    settings_language_english: "English", "English";
    settings_language_spanish: "Español", "Español";
    settings_contacts: "Who to call", "A quién llamar";
    settings_carer: "Your name in the journal", "Su nombre en el diario";
    settings_carer_hint: "Shown to the breeder and to a second carer.", "Lo ven el criador y un segundo cuidador.";
    settings_storage: "Storage", "Almacenamiento";
    settings_persisted: "The browser will not clear it by itself.", "El navegador no lo borrará por su cuenta.";
    settings_not_persisted: "The browser may clear it when space is short. Save backups.", "El navegador puede borrarlo si falta espacio. Guarde copias de seguridad.";
    settings_save_all: "Save everything as plain text", "Guardar todo como texto";
    settings_install_text: "Add Perchlight to the home screen before you add a chick: on an iPhone the installed app and Safari keep separate records.", "Añada Perchlight a la pantalla de inicio antes de añadir un polluelo: en un iPhone la app instalada y Safari guardan los datos por separado.";

    update_ready: "A new version is ready.", "Hay una versión nueva.";
    update_now: "Reload now", "Recargar ahora";
    update_later: "Later", "Más tarde";

    weaning_title: "Weaning", "Destete";
}
